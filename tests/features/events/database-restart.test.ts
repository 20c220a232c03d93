import { chmodSync, mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type BundledServer, startBundledServer } from "../../../src/database/bundled-server/index.ts";
import { migrate } from "../../../src/database/migrate.ts";
import { MIGRATIONS } from "../../support/database-setup.ts";
import { runSql } from "../../support/sql.ts";
import { appOn } from "../../support/test-app.ts";
import { listenTo } from "./hearer.ts";

let folder: string;
let server: BundledServer;

const start = () =>
  startBundledServer(path.join(folder, "data"), { settings: { fsync: "off" }, sync: false });

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "restart-"));
  chmodSync(folder, 0o755);
  server = await start();
  await runSql(server.connection("postgres"), "create database club");
  await migrate(server.connection("club"), MIGRATIONS);
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

it("a stream outlives a restart of the database, and tells of what was done since", async () => {
  const { app, request, close } = await appOn(server.connection("club"));
  await app.listen({ host: "127.0.0.1", port: 0 });
  const club = { code: "vale", name: "Club", timeZone: "Europe/London", scale: 87 };
  await request.post("/api/clubs").send(club).expect(201);
  const { port } = app.server.address() as AddressInfo;
  const hearer = listenTo(`http://127.0.0.1:${port}/api/clubs/vale/events`);
  await hearer.opened;
  const add = (code: string) => request.post("/api/clubs/vale/places").send({ code, name: "Place" });
  await add("before").expect(201);
  await expect.poll(hearer.codes).toEqual(["before"]);
  await server.stop();
  await add("without").expect(503);
  server = await start();
  await expect.poll(async () => (await add("after")).status, { timeout: 10_000 }).toBe(201);
  await expect.poll(hearer.codes, { timeout: 10_000 }).toEqual(["before", "after"]);
  await hearer.hangUp();
  await close();
});
