import type pg from "pg";
import supertest from "supertest";
import { type AppDeps, buildApp } from "../../src/app.ts";
import { createClient } from "../../src/database/client.ts";
import { createAuthenticate } from "../../src/features/accounts/index.ts";
import { admitLocalUser } from "../../src/http/actor.ts";
import { systemClock } from "../../src/lib/clock.ts";
import { quietMailer } from "../../src/mail/mailer.ts";
import { testDatabase } from "./test-database.ts";

interface TestDeps extends AppDeps {
  /** Lets in by cookie and token alone, as the service does; without it everyone may do everything. */
  readonly accounts: boolean;
}

// what OWASP asks for would be most of a suite's time
const CHEAP = { memoryCost: 8, timeCost: 1, parallelism: 1 };

/** The whole app on a database of its own; `overrides` replaces what a test wants to hold still. Close it in the end. */
export async function testApp(overrides: Partial<TestDeps> = {}) {
  const database = await testDatabase();
  const server = await appOn(database.connection, overrides);
  return {
    ...server,
    connection: database.connection,
    async close() {
      await server.close();
      await database.drop();
    },
  };
}

/** One more server on a database that there is. Close it in the end, before the database is dropped. */
export async function appOn(
  connection: pg.ClientConfig,
  { accounts = false, ...overrides }: Partial<TestDeps> = {},
) {
  const prisma = createClient(connection);
  const { clock = systemClock, demoSignIns } = overrides;
  const demo = demoSignIns !== undefined;
  const app = await buildApp({
    database: prisma,
    connection,
    clock,
    authenticate: accounts ? createAuthenticate(prisma, clock, { demo }) : admitLocalUser,
    passwordCost: CHEAP,
    mailer: quietMailer,
    publicUrl: () => "http://127.0.0.1/",
    logger: false,
    listenHost: "127.0.0.1",
    trustedProxies: [],
    clientDir: undefined,
    version: "0.0.0",
    ...overrides,
  });
  await app.ready();
  return {
    app,
    request: supertest(app.server),
    prisma,
    async close() {
      await app.close();
      await prisma.$disconnect();
    },
  };
}
