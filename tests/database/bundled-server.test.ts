import { spawn } from "node:child_process";
import { once } from "node:events";
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import {
  type BundledServer,
  FolderInUse,
  startBundledServer,
} from "../../src/database/bundled-server/index.ts";
import { StartupError } from "../../src/lib/startup-error.ts";
import { runSql } from "../support/sql.ts";

let folder: string;
let left: BundledServer | undefined;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "bundled-"));
  chmodSync(folder, 0o755); // when root runs the tests, another account runs the server
});

afterEach(async () => {
  await left?.stop();
  left = undefined;
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

const start = async () => {
  left = await startBundledServer(path.join(folder, "pg"), { sync: false });
  return left;
};

const show = async (server: BundledServer, setting: string) =>
  (await runSql<Record<string, string>>(server.connection("postgres"), `show ${setting}`)).rows[0]?.[setting];

describe("the bundled server", () => {
  it("starts on an empty folder, in UTF-8 and UTC, reachable only through its socket", async () => {
    const server = await start();
    expect(server.adopted).toBe(false);
    expect(await show(server, "server_encoding")).toBe("UTF8");
    expect(await show(server, "listen_addresses")).toBe("");
    expect(await show(server, "TimeZone")).toBe("UTC");
    await runSql(server.connection("postgres"), "create table kept ()");
    await server.stop();
    // it has ended; that its number is given back can take the system a moment more
    await vi.waitFor(() => expect(() => process.kill(server.pid, 0)).toThrow(/ESRCH/), 10_000);
  });

  it("finds its data again, even beside a half-made folder", async () => {
    mkdirSync(path.join(folder, "pg/data.init"));
    writeFileSync(path.join(folder, "pg/data.init/PG_VERSION"), "18");
    const server = await start();
    await runSql(server.connection("postgres"), "select from kept");
    await server.stop();
  });

  it("leaves the server of a living owner alone", async () => {
    const server = await start();
    await expect(startBundledServer(path.join(folder, "pg"))).rejects.toThrow(FolderInUse);
    await runSql(server.connection("postgres"), "select from kept");
    await server.stop();
  });

  it("takes over the server of an owner that was killed", async () => {
    const program = `
      const { startBundledServer } = await import(${JSON.stringify(path.resolve(import.meta.dirname, "../../src/database/bundled-server/index.ts"))});
      const { pid } = await startBundledServer(${JSON.stringify(path.join(folder, "pg"))});
      console.log(pid);
      setInterval(() => {}, 1000);`;
    const owner = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "--eval", program], {
      stdio: ["ignore", "pipe", "inherit"],
    });
    const [line] = await Promise.race([once(owner.stdout, "data"), once(owner, "exit")]);
    owner.kill("SIGKILL");
    await once(owner, "exit");
    const server = await start();
    expect(server).toMatchObject({ adopted: true, pid: Number(line) });
    await server.stop();
  });

  it("recovers when everything was killed", async () => {
    const killed = await start();
    process.kill(killed.pid, "SIGKILL");
    const server = await start();
    expect(server.adopted).toBe(false);
    await runSql(server.connection("postgres"), "select from kept");
    await server.stop();
  });
});

describe("a folder that won't do is refused in one sentence", () => {
  const refusal = (where: string) => startBundledServer(where).catch((error: unknown) => error as Error);

  it("a path too long for a socket", async () => {
    const error = await refusal(path.join(folder, "x".repeat(120)));
    expect(error).toBeInstanceOf(StartupError);
    expect(error).toHaveProperty("message", expect.stringMatching(/too long for a socket .* shorter/));
  });

  it("a file where the folder should be", async () => {
    writeFileSync(path.join(folder, "file"), "");
    const error = await refusal(path.join(folder, "file/pg"));
    expect(error).toBeInstanceOf(StartupError);
    expect(error).toHaveProperty("message", expect.stringMatching(/can't be written .*DATA_DIR/));
  });
});
