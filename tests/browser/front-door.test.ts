import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { projectRoot } from "../../src/lib/project-root.ts";
import { complaintsOf, noBrowser, openBrowser } from "../support/browser.ts";
import { testApp } from "../support/test-app.ts";

describe.skipIf(noBrowser)("in a browser, under the security policy", () => {
  let browser: Browser;
  let service: Awaited<ReturnType<typeof testApp>>;
  let address: string;

  beforeAll(async () => {
    service = await testApp({ clientDir: path.join(projectRoot(import.meta.dirname), "dist/web") });
    address = await service.app.listen({ port: 0, host: "127.0.0.1" });
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    await service?.close();
  });

  it("the start page draws itself without a complaint", async () => {
    const page = await browser.newPage();
    const complaints = complaintsOf(page);
    await page.goto(address, { waitUntil: "networkidle" });
    expect(await page.locator("h1").count()).toBeGreaterThan(0);
    // that nobody is signed in is an answer that browsers complain of
    expect(complaints.filter((one) => !one.endsWith("/api/me"))).toEqual([]);
  });

  it("the API reference draws itself without a complaint", async () => {
    const page = await browser.newPage();
    const complaints = complaintsOf(page);
    await page.goto(`${address}/api/docs/`, { waitUntil: "networkidle" });
    await page.locator("#operations-tag-service").click();
    await page.getByText("/healthz").first().waitFor();
    expect(await page.getByText("Does the service run?", { exact: true }).count()).toBe(1);
    expect(complaints).toEqual([]);
  });
});
