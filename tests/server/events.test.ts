import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { createClient } from "../../src/database/client.ts";
import { inTransaction } from "../../src/database/transaction.ts";
import { startSignIn } from "../../src/features/accounts/index.ts";
import { listenTo } from "../features/events/hearer.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";
import { killServices, startService } from "./service.ts";

let database: TestDatabase;

beforeAll(async () => {
  database = await testDatabase();
});
afterEach(killServices);
afterAll(() => database.drop());

/** The address of a database that is reached through a folder's socket. */
function start() {
  const { host = "", user = "", database: name = "", password } = database.connection;
  const secret = typeof password === "string" ? `:${password}` : "";
  return startService({
    DATABASE_URL: `postgresql://${user}${secret}@localhost/${name}?host=${encodeURIComponent(host)}`,
  });
}

/** The cookie of somebody who belongs to the club. */
async function signedInMember(): Promise<string> {
  const client = createClient(database.connection);
  const { id: clubId } = await client.club.findUniqueOrThrow({ where: { code: "vale" } });
  const { token } = await inTransaction(client, async (transaction) => {
    const { id } = await transaction.person.create({ data: { email: "ada@example.org", name: "Ada" } });
    await transaction.member.create({
      data: { clubId, code: "ada", name: "Ada", passedFor: [], junior: false, roles: [] },
    });
    await transaction.membership.create({ data: { clubId, memberCode: "ada", personId: id } });
    return startSignIn(transaction, id, new Date());
  });
  await client.$disconnect();
  return `__Host-foreman=${token}`;
}

const addPlace = (code: string) =>
  runSql(
    database.connection,
    "insert into places (id, club_id, code, name) select gen_random_uuid(), id, $1, '' from clubs where code = 'vale'",
    [code],
  );

it("a restarted server takes a stream up where another left it, killed or stopped", async () => {
  await runSql(
    database.connection,
    `insert into clubs (id, code, name, time_zone, scale, set_up_ms, release_ms, release_dwell_ms, pick_up_ms, hand_in_ms, reserve,
       inrush_ms, fault_margin, drop_share, busy_share, walking_detour, walking_mm_per_second)
     values (gen_random_uuid(), 'vale', 'Club', 'Europe/London', 87, 0, 0, 0, 0, 0, 0.2, 0, 1, 0.1, 1, 1, 1000)`,
  );
  const [one, other] = [start(), start()];
  const headers = { cookie: await signedInMember() };
  const path = "/api/clubs/vale/events";
  const [here, there] = [
    listenTo((await one.address) + path, headers),
    listenTo((await other.address) + path, headers),
  ];
  await Promise.all([here.opened, there.opened]);
  await addPlace("one");
  await expect.poll(here.codes).toEqual(["one"]);
  await expect.poll(there.codes).toEqual(["one"]);

  other.process.kill("SIGKILL");
  await there.ended;
  await addPlace("two");
  const again = listenTo((await one.address) + path, { ...headers, "last-event-id": String(there.lastId()) });
  await expect.poll(again.codes).toEqual(["two"]);

  one.process.kill("SIGTERM");
  await Promise.all([here.ended, again.ended]);
  expect(await one.ended).toMatchObject({ code: 0, errors: "" });
  await addPlace("three");
  const third = start();
  const resumed = listenTo((await third.address) + path, {
    ...headers,
    "last-event-id": String(again.lastId()),
  });
  await expect.poll(resumed.codes).toEqual(["three"]);
  third.process.kill("SIGTERM");
  expect(await third.ended).toMatchObject({ code: 0, errors: "" });
});
