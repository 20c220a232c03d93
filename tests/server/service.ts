import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type pg from "pg";
import { projectRoot } from "../../src/lib/project-root.ts";

const ROOT = projectRoot(import.meta.dirname);
const BUILT = path.join(ROOT, "dist/src/server.js");

// without the build that comes before it: that one has been made
export const BY_NPM = ["npm", "start", "--silent", "--ignore-scripts"] as const;
const BY_NODE = [process.execPath, BUILT] as const;

/** The built service as a process of its own, in a process group of its own as at a terminal. */
export interface Service {
  readonly process: ChildProcess;
  /** Resolves with the address it printed; rejects with what it said when it ended instead. */
  readonly address: Promise<string>;
  /** Exit code and everything it wrote, once it has ended. */
  readonly ended: Promise<{ code: number | null; output: string; errors: string }>;
}

const started: ChildProcess[] = [];

export function startService(
  environment: Readonly<Record<string, string>>,
  [program, ...rest]: typeof BY_NPM | typeof BY_NODE = BY_NODE,
): Service {
  if (!existsSync(BUILT)) throw new Error("the service is not built: npm run build");
  const { DATABASE_URL, ...inherited } = process.env;
  const child = spawn(program, rest, {
    cwd: ROOT,
    env: { ...inherited, NODE_ENV: "production", PORT: "0", DEMO: "false", ...environment },
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
  });
  started.push(child);
  let output = "";
  let errors = "";
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    output += text;
  });
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    errors += text;
  });
  const ended = once(child, "close").then(([code]) => ({ code: code as number | null, output, errors }));
  const address = new Promise<string>((resolve, reject) => {
    child.stdout.on("data", () => {
      const found = /Running Foreman: (http:\S+)\//.exec(output)?.[1];
      if (found !== undefined) resolve(found);
    });
    ended.then((end) => reject(new Error(`ended with ${end.code}: ${end.output}${end.errors}`)), reject);
  });
  address.catch(() => {}); // not every test looks at it
  return { process: child, address, ended };
}

/** Ends what a failed test left behind. */
export async function killServices(): Promise<void> {
  for (const child of started.splice(0)) {
    if (child.exitCode !== null || child.signalCode !== null) continue;
    child.kill("SIGTERM");
    await once(child, "exit");
  }
}

/** A data folder that also the account PostgreSQL runs under can enter when root runs the tests. */
export function dataFolder() {
  const folder = mkdtempSync(path.join(tmpdir(), "service-"));
  chmodSync(folder, 0o755);
  const data = path.join(folder, "postgres/data");
  return {
    folder,
    /** Process of the PostgreSQL that runs on it, undefined when none does. */
    postmaster(): number | undefined {
      const file = path.join(data, "postmaster.pid");
      return existsSync(file) ? Number.parseInt(readFileSync(file, "utf8"), 10) : undefined;
    },
    connection(): pg.ClientConfig {
      return { host: data, user: "postgres", database: "running_foreman" };
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
