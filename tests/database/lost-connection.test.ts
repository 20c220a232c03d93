import { afterAll, beforeAll, expect, it } from "vitest";
import { ActingPg } from "../../src/database/acting-adapter.ts";
import { createClient } from "../../src/database/client.ts";
import { isUnavailable } from "../../src/database/errors.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let test: TestDatabase;

beforeAll(async () => {
  test = await testDatabase("empty");
});
afterAll(() => test.drop());

it("bears that a connection is lost in the moment it goes from one user to the next", async () => {
  const adapter = await new ActingPg(test.connection).connect();
  const pool = adapter.underlyingDriver();
  const client = await pool.connect();
  expect(() =>
    client.emit("error", new Error("terminating connection due to unexpected postmaster exit")),
  ).not.toThrow();
  client.release();
  await adapter.dispose();
});

it("knows a database that is not to be had by whatever a transaction meets whose server process was ended", async () => {
  const database = createClient({ ...test.connection, max: 1 });
  const met: unknown[] = [];
  const whole = await database
    .$transaction(async (transaction) => {
      const [row] = await transaction.$queryRaw<{ pid: number }[]>`select pg_backend_pid() as pid`;
      await runSql(test.connection, "select pg_terminate_backend($1)", [row?.pid]);
      for (let query = 0; query < 3; query++)
        await transaction.$queryRaw`select 1`.catch((error: unknown) => met.push(error));
      throw met.at(-1);
    })
    .catch((error: unknown) => error);
  await database.$disconnect();
  expect(met).toHaveLength(3);
  expect([...met, whole].filter((error) => !isUnavailable(error))).toEqual([]);
});
