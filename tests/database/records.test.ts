import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  CONTROLS,
  FIGURE_SOURCES,
  HANDSET_KINDS,
  HANDSET_STATES,
  LOCOMOTIVE_POSITIONS,
  SECTION_USES,
  SECTION_WIRINGS,
  SHARINGS,
  TIMETABLE_STATES,
} from "../../shared/vocabulary.ts";
import { makeClub } from "../features/example-club.ts";
import { runSql } from "../support/sql.ts";
import { testApp } from "../support/test-app.ts";

// What no program may write, whatever it leaves out. Codes: PostgreSQL manual, appendix A; RF001 is our own.

let app: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  app = await testApp();
  await makeClub(app, "north");
  await makeClub(app, "south", {
    layout: { areas: [{ code: "far", name: "Far" }], places: [{ code: "away", name: "Away" }] },
  });
});
afterAll(() => app.close());

const sql = (text: string) => runSql(app.connection, text);

/** SQLSTATE and constraint that refuse a statement; it fails the test when it is taken. */
async function refusalOf(text: string): Promise<string> {
  try {
    await sql(`begin; ${text}; commit`);
  } catch (error) {
    const { code, constraint = "" } = error as { code: string; constraint?: string };
    return `${code} ${constraint}`;
  }
  throw new Error(`taken: ${text}`);
}

const north = "(select id from clubs where code = 'north')";
const south = "(select id from clubs where code = 'south')";

describe("the database refuses", () => {
  it.each([
    [
      "a section in another club's area",
      `update sections set area_code = 'far' where code = 'L1'`,
      "23503 sections_club_id_area_code_fkey",
    ],
    ["a section moved to another club", `update sections set club_id = ${south} where code = 'E1'`, "23503"],
    [
      "a stop at another club's place",
      `update line_stops set place_code = 'away'`,
      "23503 line_stops_club_id_place_code_fkey",
    ],
    [
      "a path over what is no section",
      `update path_entries set section_code = 'nowhere' where position = 3 and train_id in (select id from trains where code = '102')`,
      "23503 path_entries_club_id_section_code_fkey",
    ],
    ["a part whose club is not its record's", `update handset_places set club_id = ${south}`, "23503"],
    ["the removal of a section in use", `delete from sections where code = 'L1'`, "links_club_id_"],
    ["the removal of a club with records", `delete from clubs where code = 'south'`, "_club_id_fkey"],
    [
      "the removal of a version that a slot runs",
      `delete from timetable_versions where number = 2`,
      "slots_",
    ],
    [
      "a code twice",
      `insert into areas (id, club_id, code, name) values (gen_random_uuid(), ${north}, 'main', 'x')`,
      "23505 areas_club_id_code_key",
    ],
    [
      "two decoders in one locomotive",
      `update decoders set locomotive_code = 'E7'`,
      "23505 decoders_one_a_locomotive",
    ],
    [
      "two selectors of one section",
      `update selectors set section_code = 'Q0'`,
      "23505 selectors_one_a_section",
    ],
    [
      "an output code twice in a club",
      `insert into controller_outputs select club_id, controller_id, 9, code, name, rating_ma from controller_outputs where code = 'K1'`,
      "23505 controller_outputs_pkey",
    ],
    [
      "slots that overlap",
      `update slots set starts_at = starts_at - interval '1 minute' where code = 'second'`,
      "23P01 slots_one_railway",
    ],
    [
      "a slot that ends when it starts",
      `update slots set ends_at = starts_at`,
      "23514 slots_end_after_start",
    ],
    ["a negative current", `update locomotives set running_ma = -1`, "23514 locomotives_currents_sane"],
    ["a length of 0", `update rakes set length_mm = 0`, "23514 rakes_length_sane"],
    ["a rating of 0", `update supplies set rating_ma = 0`, "23514 supplies_currents_sane"],
    ["a clock ratio of 0", `update sessions set clock_ratio = 0`, "23514 sessions_ratio_sane"],
    ["half a policy", `update sessions set reserve = null`, "23514 sessions_policy_whole"],
    // NMRA S-9.2.1: short 1 to 127, long 128 to 10239
    [
      "a short address of 128",
      `update decoders set address = 128 where code = 'X3'`,
      "23514 decoders_address_fits_kind",
    ],
    [
      "a long address of 10240",
      `update decoders set address = 10240 where code = 'X7'`,
      "23514 decoders_address_fits_kind",
    ],
    [
      "a changeover section wired for one",
      `update sections set wiring = 'digital' where code = 'Q0'`,
      "23514 sections_changeover_needs_both",
    ],
    [
      "a link of a section with itself",
      `update links set to_code = from_code`,
      "23514 links_join_two_sections",
    ],
    [
      "an issued version as a draft",
      `update timetable_versions set state = 'draft' where number = 1`,
      "RF001",
    ],
    [
      "another number for an issued version",
      `update timetable_versions set number = 9 where number = 1`,
      "RF001",
    ],
    [
      "a change of an issued train",
      `update trains set name = 'x' where version_id = (select id from timetable_versions where number = 1)`,
      "RF001",
    ],
    [
      "the removal of an issued train",
      `delete from trains where version_id = (select id from timetable_versions where number = 1)`,
      "RF001",
    ],
    [
      "a new train in an issued version",
      `insert into trains (id, club_id, version_id, code, name, priority, earlier_minutes, later_minutes) select gen_random_uuid(), club_id, id, 'x', 'x', 5, 0, 0 from timetable_versions where number = 1`,
      "RF001",
    ],
    [
      "another time in an issued path",
      `update path_entries set depart_s = 1 where train_id in ${trainsOf(1)}`,
      "RF001",
    ],
    [
      "another section in an issued path",
      `update path_entries set section_code = 'Q1' where train_id in ${trainsOf(1)}`,
      "RF001",
    ],
    ["a shorter issued path", `delete from path_entries where train_id in ${trainsOf(1)}`, "RF001"],
    [
      "other stock for an issued train",
      `update train_locomotives set locomotive_code = 'T3' where train_id in ${trainsOf(1)}`,
      "RF001",
    ],
    ["no stock for an issued train", `delete from train_rakes where train_id in ${trainsOf(1)}`, "RF001"],
  ])("%s", async (_, statement, refusal) => {
    expect(await refusalOf(statement)).toContain(refusal);
  });
});

function trainsOf(number: number): string {
  return `(select t.id from trains t join timetable_versions v on v.id = t.version_id where v.number = ${number})`;
}

describe("a rename reaches whatever refers", () => {
  it("and moves the versions of all of them, those of issued trains included", async () => {
    const { rows: before } = await sql("select code, version from trains order by version_id, code");
    await sql("update sections set code = 'L1x' where code = 'L1'");
    const { rows: entries } = await sql("select from path_entries where section_code = 'L1x'");
    const { rows: links } = await sql("select version from links where 'L1x' in (from_code, to_code)");
    const { rows: after } = await sql("select code, version from trains order by version_id, code");
    expect([entries.length, links]).toEqual([3, [{ version: 2 }, { version: 2 }]]);
    expect(after).toEqual(before.map((row) => ({ ...row, version: row.version + 1 })));
    await sql("update sections set code = 'L1' where code = 'L1x'");
  });
});

describe("every word of the closed lists is taken, and no other", () => {
  it.each([
    ["sections", "use", SECTION_USES],
    ["sections", "wiring", SECTION_WIRINGS],
    ["sections", "sharing", SHARINGS],
    ["locomotives", "running_source", FIGURE_SOURCES],
    ["locomotives", "standing_source", FIGURE_SOURCES],
    ["locomotives", "stall_source", FIGURE_SOURCES],
    ["locomotives", "inrush_source", FIGURE_SOURCES],
    ["rakes", "lighting_source", FIGURE_SOURCES],
    ["rakes", "inrush_source", FIGURE_SOURCES],
    ["handsets", "kind", HANDSET_KINDS],
    ["handsets", "state", HANDSET_STATES],
    ["timetable_versions", "state", TIMETABLE_STATES],
    ["train_locomotives", "standing", LOCOMOTIVE_POSITIONS],
    ["session_areas", "control", CONTROLS],
  ] as const)("%s.%s", async (table, column, list) => {
    const { rows } = await sql(
      `select pg_get_constraintdef(oid) as text from pg_constraint where contype = 'c' and conrelid = '${table}'::regclass`,
    );
    const listed = new RegExp(`\\b${column} = ANY \\(ARRAY\\[([^\\]]*)\\]`);
    const words = rows.flatMap(
      ({ text }) => listed.exec(String(text))?.[1]?.match(/(?<=')[^',]+(?='::text)/g) ?? [],
    );
    expect(words.sort()).toEqual([...list].sort());
  });
});
