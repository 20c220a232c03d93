import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";
import { once } from "../../src/database/milestones.ts";
import { inTransaction } from "../../src/database/transaction.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let client: DatabaseClient;

beforeAll(async () => {
  database = await testDatabase();
  client = createClient(database.connection);
});

afterAll(async () => {
  await client.$disconnect();
  await database.drop();
});

describe("a transaction", () => {
  it("loses no update when eight read and write the same record at once", async () => {
    const counter = { name: "counter" };
    const at = (count: number) => ({ reachedAt: new Date(count) });
    await client.milestone.create({ data: { ...counter, ...at(0) } });
    let attempts = 0;
    const addOne = () =>
      inTransaction(client, async (tx) => {
        attempts++;
        const { reachedAt } = await tx.milestone.findUniqueOrThrow({ where: counter });
        await tx.milestone.update({ where: counter, data: at(reachedAt.getTime() + 1) });
      });
    await Promise.all(Array.from({ length: 8 }, addOne));
    expect(await client.milestone.findUniqueOrThrow({ where: counter })).toMatchObject(at(8));
    expect(attempts).toBeGreaterThan(8);
  });

  it("is run again when the conflict shows only at commit", async () => {
    // write skew: each reads what the other inserts, so no statement fails and one of the commits must
    let bothHaveRead = 0;
    let attempts = 0;
    const insertIfEmpty = (name: string) =>
      inTransaction(client, async (tx) => {
        attempts++;
        const found = await tx.milestone.count({ where: { name: { startsWith: "skew" } } });
        bothHaveRead++;
        while (bothHaveRead < 2) await new Promise((resolve) => setTimeout(resolve, 5));
        if (found === 0) await tx.milestone.create({ data: { name } });
      });
    await Promise.all(["skew a", "skew b"].map(insertIfEmpty));
    expect(await client.milestone.count({ where: { name: { startsWith: "skew" } } })).toBe(1);
    expect(attempts).toBe(3);
  });

  it("leaves nothing when its work throws, and passes the error on untouched", async () => {
    const refusal = new Error("no");
    let attempts = 0;
    const work = inTransaction(client, async (tx) => {
      attempts++;
      await tx.milestone.create({ data: { name: "undone" } });
      throw refusal;
    });
    await expect(work).rejects.toBe(refusal);
    expect(await client.milestone.count({ where: { name: "undone" } })).toBe(0);
    expect(attempts).toBe(1);
  });
});

describe("a milestone", () => {
  it("is reached by one of several that try at once", async () => {
    let times = 0;
    const tries = Array.from({ length: 4 }, () =>
      once(database.connection, "first", async () => {
        times++;
      }),
    );
    expect((await Promise.all(tries)).filter(Boolean)).toHaveLength(1);
    expect(times).toBe(1);
  });

  it("is not reached by work that fails, so the next one tries", async () => {
    const failing = once(database.connection, "second", () => Promise.reject(new Error("full")));
    await expect(failing).rejects.toThrow("full");
    expect(await once(database.connection, "second", async () => {})).toBe(true);
  });
});
