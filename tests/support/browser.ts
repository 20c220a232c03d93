import { accessSync, constants } from "node:fs";
import path from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** A Chromium on this machine: what CHROMIUM names, or the first on the PATH; undefined when there is none. */
export const chromiumPath: string | undefined =
  process.env.CHROMIUM ??
  (process.env.PATH ?? "")
    .split(path.delimiter)
    .flatMap((folder) => NAMES.map((name) => path.join(folder, name)))
    .find(isExecutable);

/** For `describe.skipIf`: the tests it holds are skipped, and counted as such, where no browser is. */
export const noBrowser = chromiumPath === undefined;

/** Starts it without a window. Close it in the end. */
export function openBrowser(): Promise<Browser> {
  if (chromiumPath === undefined) throw new Error("no Chromium here: the test should have been skipped");
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: chromiumPath,
    // its sandbox does not work for root, and shared memory is short in containers
    args: ["--disable-dev-shm-usage", ...(asRoot ? ["--no-sandbox"] : [])],
  });
}

/** Everything the page complains of from now on: errors in the console, those nobody caught, and requests that failed. */
export function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(`${message.text()} ${message.location().url}`);
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("requestfailed", (request) => {
    const why = String(request.failure()?.errorText);
    // a page that is left gives up its line of events, and what it was reading; a row that is saved, what it was asking
    const isReading = request.method() === "GET" || /\/(events|effects)$/.test(request.url());
    if (why === "net::ERR_ABORTED" && isReading) return;
    complaints.push(`${request.url()} ${why}`);
  });
  return complaints;
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
