import { connect, type Socket } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { runSql } from "../support/sql.ts";
import { BY_NPM, dataFolder, killServices, startService } from "./service.ts";

let data: ReturnType<typeof dataFolder>;

beforeAll(() => {
  data = dataFolder();
});
afterEach(killServices);
afterAll(() => data.remove());

const start = () => startService({ DATA_DIR: data.folder });

const remember = (name: string) =>
  runSql(data.connection(), "insert into milestones (name) values ($1)", [name]);

const remembered = async () =>
  (await runSql<{ name: string }>(data.connection(), "select name from milestones order by name")).rows.map(
    ({ name }) => name,
  );

const healthy = async (address: string) => (await fetch(`${address}/readyz`)).status;

/** A request of which the last byte is still to come. */
async function openRequest(address: string): Promise<{ socket: Socket; answer: Promise<string> }> {
  const { hostname, port } = new URL(address);
  const socket = connect(Number(port), hostname);
  const answer = new Promise<string>((resolve, reject) => {
    let all = "";
    socket.setEncoding("utf8").on("data", (text) => {
      all += text;
    });
    socket.on("close", () => resolve(all)).on("error", reject);
  });
  const head =
    "POST /api/nothing HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: 2\r\n\r\n{";
  await new Promise<unknown>((resolve) => {
    socket.write(head, resolve);
  });
  await sleep(200); // until the service has read it
  return { socket, answer };
}

describe("the service", () => {
  it("starts on an empty folder, and on SIGTERM answers what is under way before it and its database end", async () => {
    const service = start();
    const address = await service.address;
    expect(await healthy(address)).toBe(200);
    await remember("before the first stop");
    const { socket, answer } = await openRequest(address);
    service.process.kill("SIGTERM");
    await sleep(300);
    expect(service.process.exitCode).toBeNull();
    socket.write("}");
    expect(await answer).toMatch(/^HTTP\/1\.1 404 [\s\S]*"code":"not-found"/);
    expect(await service.ended).toMatchObject({ code: 0, errors: "" });
    expect(data.postmaster()).toBeUndefined();
  });

  it("finds its data again, and ends as well on Ctrl-C, which reaches its whole process group", async () => {
    const service = start();
    expect(await healthy(await service.address)).toBe(200);
    expect(await remembered()).toEqual(["before the first stop"]);
    process.kill(-(service.process.pid ?? 0), "SIGINT");
    expect(await service.ended).toMatchObject({ code: 0, errors: "" });
    expect(data.postmaster()).toBeUndefined();
  });

  it("ends as well when npm, which started it, is told to", async () => {
    const service = startService({ DATA_DIR: data.folder }, BY_NPM);
    expect(await healthy(await service.address)).toBe(200);
    service.process.kill("SIGTERM");
    // its output closes only when the last process that writes there is gone
    expect(await service.ended).toMatchObject({ errors: "" });
    expect(data.postmaster()).toBeUndefined();
  });

  it("takes over its database after it alone was killed", async () => {
    const killed = start();
    await killed.address;
    await remember("before the kill");
    killed.process.kill("SIGKILL");
    await killed.ended;
    const orphan = data.postmaster();
    expect(orphan).toBeGreaterThan(0);
    const service = start();
    expect(await healthy(await service.address)).toBe(200);
    expect(data.postmaster()).toBe(orphan);
    expect(await remembered()).toContain("before the kill");
    service.process.kill("SIGTERM");
    expect((await service.ended).code).toBe(0);
    expect(data.postmaster()).toBeUndefined();
  });

  it("recovers after everything was killed", async () => {
    const killed = start();
    await killed.address;
    await remember("before the crash");
    killed.process.kill("SIGKILL");
    process.kill(data.postmaster() ?? 0, "SIGKILL");
    await killed.ended;
    const service = start();
    expect(await healthy(await service.address)).toBe(200);
    expect(await remembered()).toContain("before the crash");
    service.process.kill("SIGTERM");
    expect((await service.ended).code).toBe(0);
  });

  it("leaves nothing behind when told to end while it still starts", async () => {
    const service = start();
    while (data.postmaster() === undefined) await sleep(5);
    service.process.kill("SIGTERM");
    expect((await service.ended).code).toBe(0);
    expect(data.postmaster()).toBeUndefined();
  });
});
