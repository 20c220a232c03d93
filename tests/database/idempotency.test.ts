import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";
import { onceOnly } from "../../src/database/idempotency.ts";
import type { Transaction } from "../../src/database/transaction.ts";
import { Refusal } from "../../src/lib/refusal.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let own: TestDatabase;
let client: DatabaseClient;

beforeAll(async () => {
  own = await testDatabase();
  client = createClient(own.connection);
});
afterAll(async () => {
  await client.$disconnect();
  await own.drop();
});

const keyOf = (key: string, fingerprint = "same", owner = "ada") => ({ owner, key, fingerprint });
const note = (name: string) => (transaction: Transaction) => transaction.milestone.create({ data: { name } });
const noted = async (name: string) => client.milestone.count({ where: { name: { startsWith: name } } });

it("the same request with the same key is done once, and answered the same again", async () => {
  let round = 0;
  const work = async (transaction: Transaction) => {
    round++;
    await note(`once ${round}`)(transaction);
    return { round };
  };
  expect(await onceOnly(client, keyOf("press-01"), work)).toEqual({ round: 1 });
  expect(await onceOnly(client, keyOf("press-01"), work)).toEqual({ round: 1 });
  expect(await noted("once")).toBe(1);
  // the control: without a key, and under another's name, it is done again
  expect(await onceOnly(client, undefined, work)).toEqual({ round: 2 });
  expect(await onceOnly(client, keyOf("press-01", "same", "bo"), work)).toEqual({ round: 3 });
});

it("of twelve at the same time one does it, and all hear the same", async () => {
  let calls = 0;
  const work = async (transaction: Transaction) => {
    const call = ++calls;
    await note(`together ${call}`)(transaction);
    await sleep(20);
    return { call };
  };
  const answers = await Promise.all(
    Array.from({ length: 12 }, () => onceOnly(client, keyOf("press-02"), work)),
  );
  expect(new Set(answers.map(({ call }) => call)).size).toBe(1);
  expect(await noted("together")).toBe(1);
});

it("a refusal is answered again too, although it left nothing else behind", async () => {
  const refuse = async (transaction: Transaction) => {
    await note("refused")(transaction);
    throw new Refusal("taken", "Somebody has it.", [{ pointer: "/body/train", detail: "Taken." }]);
  };
  await expect(onceOnly(client, keyOf("press-03"), refuse)).rejects.toMatchObject({ code: "taken" });
  const again = onceOnly(client, keyOf("press-03"), note("never"));
  await expect(again).rejects.toMatchObject({
    code: "taken",
    message: "Somebody has it.",
    faults: [{ pointer: "/body/train", detail: "Taken." }],
  });
  expect([await noted("refused"), await noted("never")]).toEqual([0, 0]);
});

it("another request with the same key is refused, and nothing of it done", async () => {
  await onceOnly(client, keyOf("press-04"), note("first"));
  const other = onceOnly(client, keyOf("press-04", "other"), note("second"));
  await expect(other).rejects.toMatchObject({ code: "idempotency-key-reused" });
  expect(await noted("second")).toBe(0);
});

it("what failed for no reason of the request may be tried again with the same key", async () => {
  const fail = async () => {
    throw new Error("the disk is full");
  };
  await expect(onceOnly(client, keyOf("press-05"), fail)).rejects.toThrow("the disk is full");
  await onceOnly(client, keyOf("press-05"), note("after all"));
  expect(await noted("after all")).toBe(1);
});

it("keys of last week are cleared away as new ones come", async () => {
  await runSql(own.connection, "update idempotency_keys set created_at = now() - interval '8 days'");
  await onceOnly(client, keyOf("press-06"), note("clearing"));
  const { rows } = await runSql<{ key: string }>(
    own.connection,
    "select key from idempotency_keys where created_at > now() - interval '7 days'",
  );
  expect(rows).toEqual([{ key: "press-06" }]);
});
