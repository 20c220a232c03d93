import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TRAIL_DEEDS, TRAIL_KINDS } from "../../shared/trail.ts";
import { newId } from "../../src/lib/ids.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let clubId: string;
let first: pg.Client;
let second: pg.Client;

const makeClub = async (code: string) => {
  const id = newId();
  await runSql(
    database.connection,
    `insert into clubs (id, code, name, time_zone, scale, set_up_ms, release_ms, release_dwell_ms, pick_up_ms, hand_in_ms, reserve,
       inrush_ms, fault_margin, drop_share, busy_share, walking_detour, walking_mm_per_second)
     values ($1, $2, 'Club', 'Europe/London', 87, 0, 0, 0, 0, 0, 0.2, 0, 1, 0.1, 1, 1, 1000)`,
    [id, code],
  );
  return id;
};

beforeAll(async () => {
  database = await testDatabase();
  clubId = await makeClub("vale");
  [first, second] = [new pg.Client(database.connection), new pg.Client(database.connection)];
  await Promise.all([first.connect(), second.connect()]);
});
afterAll(async () => {
  await Promise.all([first.end(), second.end()]);
  await database.drop();
});

const addArea = (client: pg.Client, code: string, club = clubId) =>
  client.query("insert into areas (id, club_id, code, name) values ($1, $2, $3, 'Area')", [
    newId(),
    club,
    code,
  ]);

interface Entry {
  readonly seq: string;
  readonly kind: string;
  readonly code: string;
  readonly deed: string;
  readonly was: unknown;
  readonly became: unknown;
  readonly withheld: readonly string[];
}
const entries = async (where = "true") =>
  (
    await runSql<Entry & pg.QueryResultRow>(
      database.connection,
      `select * from trail where ${where} order by seq`,
    )
  ).rows;
const codes = async (where: string) => (await entries(where)).map(({ code }) => code);

/** Whether a promise has settled by the time that the other connection has been asked something. */
async function isWaiting(work: Promise<unknown>): Promise<boolean> {
  const { rows } = await runSql<{ waits: boolean }>(
    database.connection,
    "select exists (select from pg_stat_activity where datname = current_database() and wait_event = 'advisory') as waits",
  );
  const settled = await Promise.race([work.then(() => true), Promise.resolve(false)]);
  return !settled && rows[0]?.waits === true;
}

describe("numbers follow the order of commits", () => {
  it("where what was changed first is committed last", async () => {
    await first.query("begin");
    await addArea(first, "early-change");
    await addArea(second, "late-change");
    expect(await codes("code like '%-change'")).toEqual(["late-change"]);
    await first.query("commit");
    expect(await codes("code like '%-change'")).toEqual(["late-change", "early-change"]);
  });

  it("so that no number below one that was seen turns up later: the second waits while the first commits", async () => {
    await first.query("begin");
    await addArea(first, "numbered");
    // as at commit: from here the first has its number, and nobody sees it yet
    await first.query("set constraints all immediate");
    const other = addArea(second, "next");
    await expect.poll(() => isWaiting(other)).toBe(true);
    expect(await codes("code in ('numbered', 'next')")).toEqual([]);
    await first.query("commit");
    await other;
    expect(await codes("code in ('numbered', 'next')")).toEqual(["numbered", "next"]);
  });

  it("and another club does not wait", async () => {
    const elsewhere = await makeClub("elsewhere");
    await first.query("begin");
    await addArea(first, "held-up");
    await first.query("set constraints all immediate");
    await addArea(second, "free", elsewhere);
    expect(await codes("code in ('held-up', 'free')")).toEqual(["free"]);
    await first.query("rollback");
    expect(await codes("code in ('held-up', 'free')")).toEqual(["free"]);
  });
});

describe("the trail only grows", () => {
  it.each([
    "update trail set code = 'x'",
    "update trail set person_id = gen_random_uuid()",
    "update trail set person_id = null, deed = 'made', code = 'y'",
    "delete from trail",
    "truncate trail",
  ])("%s is refused", async (sql) => {
    await expect(first.query(sql)).rejects.toThrow("the trail only grows");
  });

  it("a person who leaves takes the name along, and the deeds stay", async () => {
    const person = newId();
    await second.query("begin");
    await second.query("select set_config('foreman.person', $1, true)", [person]);
    await addArea(second, "by-person");
    await second.query("commit");
    const [before] = await entries(`person_id = '${person}'`);
    expect(before?.code).toBe("by-person");
    await second.query("update trail set person_id = null where person_id = $1", [person]);
    expect(await entries("code = 'by-person'")).toEqual([{ ...before, person_id: null }]);
  });

  it("a club that goes takes its trail along", async () => {
    const gone = await makeClub("gone");
    expect(await entries(`club_id = '${gone}'`)).toHaveLength(1);
    await first.query("delete from clubs where id = $1", [gone]);
    expect(await entries(`club_id = '${gone}'`)).toEqual([]);
  });
});

describe("an entry says what is different", () => {
  it("of a record: the columns that changed, and nothing where nothing did", async () => {
    await addArea(first, "told");
    await first.query("update areas set name = 'Upper', note = 'new' where code = 'told'");
    await first.query("update areas set name = 'Upper' where code = 'told'");
    await first.query("delete from areas where code = 'told'");
    expect((await entries("code = 'told'")).map(({ deed, was, became }) => [deed, was, became])).toEqual([
      ["made", null, { code: "told", name: "Area", note: "" }],
      ["changed", { name: "Area", note: "" }, { name: "Upper", note: "new" }],
      ["removed", { code: "told", name: "Upper", note: "new" }, null],
    ]);
  });

  it("of its parts: those that went and those that came, in one entry with the record", async () => {
    await addPlaces("A", "B", "C");
    const line = newId();
    await first.query("begin");
    await first.query("insert into lines (id, club_id, code, name) values ($1, $2, 'main', 'Main')", [
      line,
      clubId,
    ]);
    await addStops(line, [
      ["A", 0],
      ["B", 900],
    ]);
    await first.query("commit");
    await first.query("begin");
    await first.query("update lines set name = 'Main' where id = $1", [line]);
    await first.query("delete from line_stops where line_id = $1", [line]);
    await addStops(line, [
      ["A", 0],
      ["C", 950],
    ]);
    await first.query("commit");
    const stops = (...list: [number, string, number][]) => ({
      stops: list.map(([position, place_code, at_mm]) => ({ position, place_code, at_mm })),
    });
    expect((await entries("kind = 'line'")).map(({ deed, was, became }) => [deed, was, became])).toEqual([
      ["made", null, { code: "main", name: "Main", note: "", ...stops([0, "A", 0], [1, "B", 900]) }],
      ["changed", stops([1, "B", 900]), stops([1, "C", 950])],
    ]);
  });

  it("of parts that a renamed record reaches, also where the record itself was told of before", async () => {
    await first.query("begin");
    await first.query("update lines set name = 'Trunk' where code = 'main'");
    await first.query("set constraints all immediate");
    await first.query("update places set code = 'C2' where code = 'C'");
    await first.query("delete from line_stops where place_code = 'A'");
    await first.query("commit");
    expect((await entries("kind = 'line'")).slice(2).map(({ was, became }) => [was, became])).toEqual([
      [{ name: "Main" }, { name: "Trunk" }],
      [
        { stops: [{ position: 1, place_code: "C", at_mm: 950 }] },
        { stops: [{ position: 1, place_code: "C2", at_mm: 950 }] },
      ],
      [{ stops: [{ position: 0, place_code: "A", at_mm: 0 }] }, {}],
    ]);
  });

  it("nothing where the transaction came to nothing", async () => {
    const before = (await entries()).length;
    await first.query("begin");
    await addArea(first, "undone");
    await addPlaces("undone");
    await first.query("rollback");
    expect((await entries()).length).toBe(before);
  });

  it("that something about a person changed, not what", async () => {
    const row = [newId(), clubId, "m1", "Ada Example", "can't on Mondays"];
    await first.query(
      "insert into members (id, club_id, code, name, note, passed_for, junior) values ($1, $2, $3, $4, $5, '{yard}', false)",
      row,
    );
    const [entry] = await entries("kind = 'member'");
    expect([entry?.became, entry?.withheld]).toEqual([
      { code: "m1", passed_for: ["yard"], junior: false, roles: [] },
      ["name", "note"],
    ]);
    expect(JSON.stringify(entry)).not.toMatch(/Ada|Mondays/);
  });

  it("never a secret, whatever a later table calls it", async () => {
    await runSql(
      database.connection,
      `create table vaults (id uuid, club_id uuid, code text, password_hash text, token_hash text, feed_secret text);
       select keep_trail('vaults', 'vault')`,
    );
    await first.query("insert into vaults values ($1, $2, 'v', 'p4ss', 't0k', 's3cret')", [newId(), clubId]);
    await first.query("update vaults set token_hash = 't1k'");
    const found = await entries("kind = 'vault'");
    expect(found.map(({ became, withheld }) => [became, withheld])).toEqual([
      [{ code: "v" }, ["feed_secret", "password_hash", "token_hash"]],
      [{}, ["token_hash"]],
    ]);
    await runSql(database.connection, "drop table vaults");
  });
});

it("every kind and deed of the contract has its table, and every table its kind", async () => {
  const { rows } = await runSql<{ kind: string }>(
    database.connection,
    `select split_part(encode(tgargs, 'escape'), '\\000', 1) as kind from pg_trigger where tgname like '%\\_trail' order by 1`,
  );
  expect(rows.map(({ kind }) => kind)).toEqual(TRAIL_KINDS.toSorted());
  expect(new Set((await entries()).map(({ deed }) => deed))).toEqual(new Set(TRAIL_DEEDS));
});

// what is no change of a club: letters and their state, ways in, and the trail itself
const WITHOUT_TRAIL = ["access_tokens", "mails", "one_time_links", "trail"];

it("every other table of a club leaves a trail, by itself or with the record it is a part of", async () => {
  const { rows } = await runSql<{ name: string }>(
    database.connection,
    `select table_name as name from information_schema.columns c
     where table_schema = 'public' and column_name = 'club_id' and not exists (
       select from pg_trigger where tgrelid = table_name::regclass and tgname ~ '_trail(_insert)?$')
     order by 1`,
  );
  expect(rows.map(({ name }) => name)).toEqual(WITHOUT_TRAIL);
});

async function addPlaces(...list: string[]): Promise<void> {
  for (const code of list)
    await first.query("insert into places (id, club_id, code, name) values ($1, $2, $3, '')", [
      newId(),
      clubId,
      code,
    ]);
}

async function addStops(line: string, stops: readonly (readonly [string, number])[]): Promise<void> {
  for (const [position, [place, atMm]] of stops.entries())
    await first.query("insert into line_stops values ($1, $2, $3, $4, $5)", [
      clubId,
      line,
      position,
      place,
      atMm,
    ]);
}
