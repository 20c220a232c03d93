import supertest from "supertest";
import { type AppDeps, buildApp } from "../../src/app.ts";
import { createClient } from "../../src/database/client.ts";
import { admitLocalUser } from "../../src/http/actor.ts";
import { systemClock } from "../../src/lib/clock.ts";
import { testDatabase } from "./test-database.ts";

/** The whole app on a database of its own; `overrides` replaces what a test wants to hold still. Close it in the end. */
export async function testApp(overrides: Partial<AppDeps> = {}) {
  const database = await testDatabase();
  const prisma = createClient(database.connection);
  const app = await buildApp({
    database: prisma,
    clock: systemClock,
    authenticate: admitLocalUser,
    logger: false,
    listenHost: "127.0.0.1",
    clientDir: undefined,
    version: "0.0.0",
    ...overrides,
  });
  await app.ready();
  return {
    app,
    request: supertest(app.server),
    prisma,
    connection: database.connection,
    async close() {
      await app.close();
      await prisma.$disconnect();
      await database.drop();
    },
  };
}
