import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { migrate } from "../../src/database/migrate.ts";
import { MIGRATIONS } from "../support/database-setup.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let folder: string;
beforeEach(async () => {
  database = await testDatabase("empty");
  folder = mkdtempSync(path.join(tmpdir(), "migrations-"));
});
afterEach(async () => {
  await database.drop();
  rmSync(folder, { recursive: true });
});

/** The database as it was before a migration, with these rows in it; nothing looks at what they refer to. */
async function before(migration: string, rows: string): Promise<void> {
  for (const name of readdirSync(MIGRATIONS).filter((one) => one < migration))
    cpSync(path.join(MIGRATIONS, name), path.join(folder, name), { recursive: true });
  await migrate(database.connection, folder);
  await runSql(database.connection, `set session_replication_role = replica; ${rows}`);
}

const CLUB = "00000000-0000-0000-0000-000000000001";
const NIGHT = "00000000-0000-0000-0000-000000000002";

it("readings of a slot that there is not are kept, and belong to none; others keep theirs", async () => {
  const reading = (n: number, code: string, slot: string) =>
    `insert into readings (id, club_id, code, taken_on, origin, district_code, session_code, slot_code, layout_s, ma)
     values ('00000000-0000-0000-0000-00000000001${n}', '${CLUB}', '${code}', '2027-03-20', 'night', 'D', 'march', '${slot}', 36000, 350);`;
  await before(
    "20261125130000_reading_slots",
    `insert into sessions (id, club_id, code, name, clock_ratio) values ('${NIGHT}', '${CLUB}', 'march', 'March', 4);
     insert into slots (club_id, session_id, position, code, name, starts_at, ends_at, layout_start_s, timetable_code, timetable_version)
     values ('${CLUB}', '${NIGHT}', 0, 'first', 'First', '2027-03-20T19:00Z', '2027-03-20T20:00Z', 36000, 'winter', 1);
     ${reading(1, "known", "first")} ${reading(2, "lost", "frist")}`,
  );
  await migrate(database.connection, MIGRATIONS);
  const { rows } = await runSql(
    database.connection,
    "select code, slot_code, version from readings order by code",
  );
  expect(rows).toEqual([
    { code: "known", slot_code: "first", version: 1 },
    { code: "lost", slot_code: null, version: 2 },
  ]);
});

it("a short test that was recorded on its day has the time when it was, by the club's clock", async () => {
  const test = (n: number, day: string) =>
    `insert into short_tests (id, club_id, code, district_code, tested_on, result, created_at)
     values ('00000000-0000-0000-0000-00000000001${n}', '${CLUB}', '${day}', 'D', '${day}', 'passed', '2027-07-01T22:30:15Z');`;
  await before(
    "20261125131000_short_test_times",
    // in Vienna, two hours ahead in summer, the day is the 2nd
    `insert into clubs (id, code, name, time_zone, scale, set_up_ms, release_ms, release_dwell_ms, pick_up_ms, hand_in_ms, reserve,
       inrush_ms, fault_margin, drop_share, busy_share, walking_detour, walking_mm_per_second)
     values ('${CLUB}', 'north', 'North', 'Europe/Vienna', 87, 0, 0, 0, 0, 0, 0.2, 200, 2, 0.05, 0.75, 1.4, 1000);
     ${test(1, "2027-07-01")} ${test(2, "2027-07-02")}`,
  );
  await migrate(database.connection, MIGRATIONS);
  const { rows } = await runSql(database.connection, "select code, tested_s from short_tests order by code");
  expect(rows).toEqual([
    { code: "2027-07-01", tested_s: null },
    { code: "2027-07-02", tested_s: 30 * 60 + 15 },
  ]);
});
