import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";
import {
  isRecordMissing,
  isUnavailable,
  isWriteConflict,
  SQLSTATE,
  sqlstate,
  violatedConstraint,
} from "../../src/database/errors.ts";
import { outsideConnection } from "../../src/database/open-database.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let client: DatabaseClient;

beforeAll(async () => {
  database = await testDatabase();
  // a server in another zone, as initdb would set it up on a laptop in Berlin
  await runSql(
    database.connection,
    `alter database "${database.connection.database}" set timezone to 'Europe/Berlin'`,
  );
  client = createClient(database.connection);
});

afterAll(async () => {
  await client.$disconnect();
  await database.drop();
});

const rejection = (promise: Promise<unknown>) =>
  promise.then(() => undefined).catch((error: unknown) => error);

describe("instants", () => {
  it.each([
    "2027-01-15T10:00:00.123Z",
    // inside the hour that Europe/Berlin skips: IANA time zone database, rule EU
    "2027-03-28T02:30:00.000Z",
  ])("%s is stored as it is, whatever zone the server keeps", async (instant) => {
    const { name } = await client.milestone.create({ data: { name: instant, reachedAt: new Date(instant) } });
    const { rows } = await runSql<{ utc: string }>(
      database.connection,
      `select to_char(reached_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as utc from milestones where name = $1`,
      [name],
    );
    expect(rows[0]?.utc).toBe(instant);
    const read = await client.milestone.findUniqueOrThrow({ where: { name } });
    expect(read.reachedAt.toISOString()).toBe(instant);
  });
});

// codes: PostgreSQL manual, appendix A, "PostgreSQL Error Codes"
describe("failures", () => {
  it("a second record with the same key names the constraint", async () => {
    await client.milestone.create({ data: { name: "twice" } });
    const error = await rejection(client.milestone.create({ data: { name: "twice" } }));
    expect(sqlstate(error)).toBe(SQLSTATE.uniqueViolation);
    expect(violatedConstraint(error)).toBe("milestones_pkey");
  });

  it("exclusion and check constraints are told by their code and name", async () => {
    await client.$executeRaw`create table spans (span int4range, n int constraint n_positive check (n > 0),
      constraint one_at_a_time exclude using gist (span with &&))`;
    await client.$executeRaw`insert into spans values ('[1,3)', 1)`;
    const clash = await rejection(client.$executeRaw`insert into spans values ('[2,4)', 1)`);
    expect([sqlstate(clash), violatedConstraint(clash)]).toEqual(["23P01", "one_at_a_time"]);
    const negative = await rejection(client.$executeRaw`insert into spans values ('[8,9)', -1)`);
    expect([sqlstate(negative), violatedConstraint(negative)]).toEqual(["23514", "n_positive"]);
  });

  it("a missing record is told from other failures", async () => {
    const error = await rejection(client.milestone.findUniqueOrThrow({ where: { name: "nowhere" } }));
    expect(isRecordMissing(error)).toBe(true);
    expect(isUnavailable(error)).toBe(false);
    expect(isWriteConflict(error)).toBe(false);
  });

  it.each([
    ["a socket nobody listens on", { host: "/nonexistent", database: "x", user: "x" }],
    ["a port nobody listens on", outsideConnection("postgresql://u:p@127.0.0.1:1/x")],
  ])("%s counts as unavailable, in and out of a transaction", async (_, connection) => {
    const lost = createClient(connection);
    expect(isUnavailable(await rejection(lost.milestone.findMany()))).toBe(true);
    expect(isUnavailable(await rejection(lost.$transaction((tx) => tx.milestone.findMany())))).toBe(true);
    await lost.$disconnect();
  });

  it("a connection that the server ends counts as unavailable, and the next query works again", async () => {
    const error = await rejection(client.$queryRaw`select pg_terminate_backend(pg_backend_pid())`);
    expect(isUnavailable(error)).toBe(true);
    expect(await client.milestone.count()).toBeGreaterThanOrEqual(0);
  });
});

describe("an address from outside", () => {
  it("keeps the options it brings and still fixes the zone", () => {
    const connection = outsideConnection("postgresql://u:p@db:5432/x?options=-c%20statement_timeout%3D5s");
    expect(connection.options).toBe("-c statement_timeout=5s -c TimeZone=UTC");
    expect(connection.connectionString).not.toContain("options");
  });
});
