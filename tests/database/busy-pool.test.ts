import { expect, it } from "vitest";
import { createClient } from "../../src/database/client.ts";
import { isUnavailable } from "../../src/database/errors.ts";
import { testDatabase } from "../support/test-database.ts";

it("takes a transaction that gets no connection in time for a database that is not to be had, not for a bug", async () => {
  const test = await testDatabase("empty");
  const database = createClient({ ...test.connection, max: 1 });
  let release = () => {};
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  let begun = () => {};
  const holds = new Promise<void>((resolve) => {
    begun = resolve;
  });
  const holder = database.$transaction(async (transaction) => {
    await transaction.$queryRaw`select 1`;
    begun();
    await released;
  });
  await holds;
  const refused = await database
    .$transaction(async () => {}, { maxWait: 50 })
    .catch((error: unknown) => error);
  release();
  await holder;
  await database.$disconnect();
  await test.drop();
  expect(isUnavailable(refused)).toBe(true);
});
