import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { actingAs } from "../../src/database/acting.ts";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";
import { inTransaction } from "../../src/database/transaction.ts";
import { newId } from "../../src/lib/ids.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let client: DatabaseClient;
let clubId: string;

beforeAll(async () => {
  database = await testDatabase();
  // few connections, so that people follow each other on each
  client = createClient({ ...database.connection, max: 3 });
  const club = await client.club.create({
    data: {
      code: "vale",
      name: "Vale",
      timeZone: "Europe/London",
      scale: 87,
      setUpMs: 0,
      releaseMs: 0,
      releaseDwellMs: 0,
      pickUpMs: 0,
      handInMs: 0,
      reserve: 0.2,
      inrushMs: 0,
      faultMargin: 1,
      dropShare: 0.1,
      busyShare: 1,
      walkingDetour: 1,
      walkingMmPerSecond: 1_000,
    },
  });
  clubId = club.id;
});
afterAll(async () => {
  await client.$disconnect();
  await database.drop();
});

const area = (code: string) => ({ data: { clubId, code, name: code } });
const doers = async () =>
  new Map(
    (await client.trailEntry.findMany({ where: { kind: "area" } })).map(({ code, personId }) => [
      code,
      personId,
    ]),
  );

describe("a change carries the person on whose behalf it is made", () => {
  const anna = newId();

  it("as a single statement, as a transaction, as SQL of our own, as a batch", async () => {
    await actingAs(anna, async () => {
      await client.area.create(area("single"));
      await inTransaction(client, (transaction) => transaction.area.create(area("transaction")));
      await client.$executeRaw`insert into areas (id, club_id, code, name) values (${newId()}::uuid, ${clubId}::uuid, 'sql', '')`;
      await client.$queryRaw`insert into areas (id, club_id, code, name) values (${newId()}::uuid, ${clubId}::uuid, 'asked', '') returning id`;
      await client.$transaction([client.area.create(area("batch"))]);
    });
    await client.area.create(area("nobody"));
    expect(await doers()).toEqual(
      new Map([
        ["single", anna],
        ["transaction", anna],
        ["sql", anna],
        ["asked", anna],
        ["batch", anna],
        ["nobody", null],
      ]),
    );
  });

  it("never somebody else's, however many share a few connections, fail, and leave in the middle", async () => {
    const people = Array.from({ length: 8 }, () => newId());
    const deeds = Array.from({ length: 240 }, (_, index) => {
      const personId = index % 9 === 8 ? null : (people[index % 9] ?? null);
      return { code: `c${index}`, personId, way: index % 5 };
    });
    await Promise.all(
      deeds.map(({ code, personId, way }) =>
        actingAs(personId, async () => {
          if (way === 0) await client.area.create(area(code));
          else if (way === 1)
            await inTransaction(client, (tx) => tx.area.create(area(code)), "ReadCommitted");
          // refused by the database, and thrown by the work itself: the connection goes back to the others
          else if (way === 2) await client.area.create(area("nobody")).catch(() => {});
          else if (way === 3)
            await inTransaction(client, async (tx) => {
              await tx.area.create(area(code));
              throw new Error("changed its mind");
            }).catch(() => {});
          else await Promise.all([client.area.create(area(code)), client.area.count()]);
        }),
      ),
    );
    const found = await doers();
    const kept = deeds.filter(({ way }) => way !== 2 && way !== 3);
    expect(kept.length).toBeGreaterThan(140);
    expect(kept.map(({ code }) => [code, found.get(code)])).toEqual(
      kept.map(({ code, personId }) => [code, personId]),
    );
    expect(deeds.filter(({ way }) => way === 3).some(({ code }) => found.has(code))).toBe(false);
  });

  it("not once the connection was lost and made again", async () => {
    await actingAs(anna, () => client.area.create(area("before the loss")));
    await runSql(
      database.connection,
      "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()",
    );
    await expect.poll(() => client.area.count().catch(() => -1)).toBeGreaterThan(0);
    await client.area.create(area("after the loss"));
    expect((await doers()).get("after the loss")).toBeNull();
  });
});
