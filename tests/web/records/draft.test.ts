import { describe, expect, it, test } from "vitest";
import { demoDocument } from "../../../seed/index.ts";
import { handset } from "../../../shared/handsets.ts";
import * as layout from "../../../shared/layout.ts";
import { reading } from "../../../shared/readings.ts";
import * as roster from "../../../shared/roster.ts";
import { READING_TABLES } from "../../../src/web/readings/reading-tables.ts";
import { followTheirs, isEdited, mergeCells, readCells, toCells } from "../../../src/web/records/draft.ts";
import type { RecordDraft, TableKind } from "../../../src/web/records/fields.ts";
import { LAYOUT_TABLES } from "../../../src/web/records/layout-tables.ts";
import { OUTPUTS, STOPS } from "../../../src/web/records/list-forms.ts";
import { HANDSET_TABLES, ROSTER_TABLES } from "../../../src/web/records/stock-tables.ts";

const TABLES = [...LAYOUT_TABLES, ...ROSTER_TABLES, ...HANDSET_TABLES, ...READING_TABLES];
const SCHEMAS = { ...layout, ...roster, handset, reading } as unknown as Record<
  string,
  { parse(value: unknown): unknown; safeParse(value: unknown): { success: boolean } }
>;
const ONE: Readonly<Record<string, string>> = { supplies: "supply", "command-systems": "commandSystem" };
const schemaOf = ({ path }: TableKind) => {
  const schema = SCHEMAS[ONE[path] ?? path.replace(/s$/, "")];
  if (schema === undefined) throw new Error(`no schema for ${path}`);
  return schema;
};
const recordsOf = ({ part, many }: TableKind): RecordDraft[] => {
  const document = demoDocument as Record<string, unknown>;
  const holder = part === null ? document : document[part];
  return ((holder as Record<string, RecordDraft[]>)[many] ?? []) as RecordDraft[];
};

describe.each(TABLES.map((kind) => [kind.words, kind] as const))("the table of %s", (_, kind) => {
  test("writes every record of the demo into its cells and reads it back whole", () => {
    for (const given of recordsOf(kind)) {
      const record = schemaOf(kind).parse(given) as RecordDraft;
      const { record: read, faults } = readCells(kind, toCells(kind, record), {});
      expect(faults).toEqual({});
      expect(schemaOf(kind).parse(read)).toEqual(record);
    }
  });

  test("has a cell for every field of the record", () => {
    const shape = Object.keys((schemaOf(kind) as unknown as { shape: object }).shape);
    const fields = new Set(kind.fields.map(({ path }) => path.split(".")[0]));
    expect([...fields].sort()).toEqual(shape.sort());
  });
});

describe("a row that is typed", () => {
  const table = (path: string) => TABLES.find((kind) => kind.path === path) as TableKind;
  const read = (path: string, cells: Record<string, string>, known = {}) =>
    readCells(table(path), cells, known);
  const section = {
    code: "L1",
    name: "Line",
    area: "main",
    use: "line",
    lengthMm: "2400",
    wiring: "digital",
    sharing: "one-train",
  };

  it("says what each cell must be, beside the cell", () => {
    const { faults } = read(
      "sections",
      { ...section, code: "L 1", lengthMm: "2.4 m", area: "nowhere", maxSpeedKmh: "fast" },
      { areas: new Set(["main"]) },
    );
    expect(faults).toEqual({
      code: "Use letters, digits, dots, dashes or underscores, starting with a letter or digit.",
      lengthMm: "A whole number from 1 to 1000000 mm.",
      area: "There is no nowhere: choose one there is.",
      maxSpeedKmh: "A number from 0.1 to 500 km/h.",
    });
  });

  it("asks for what may not be empty, and leaves the rest out", () => {
    expect(Object.keys(read("sections", {}).faults).sort()).toEqual(
      ["area", "code", "lengthMm", "name", "sharing", "use", "wiring"].sort(),
    );
    const { record, faults } = read("sections", section);
    expect(faults).toEqual({});
    expect(layout.section.parse(record)).toMatchObject({ place: null, district: null, changeover: false });
  });

  it("reads a comma in a number as people write it", () => {
    expect(read("sections", { ...section, maxSpeedKmh: "60,5" }).record.maxSpeedKmh).toBe(60.5);
  });

  it("keeps wires whole or leaves them out", () => {
    const district = { code: "D", name: "D", supply: "B", breakerMa: "3000", tripDelayMs: "100" };
    expect(read("districts", district).record.wiring).toBeNull();
    const wired = { ...district, "wiring.conductor": "1.5 mm2 flexible", "wiring.lengthMm": "8000" };
    expect(layout.district.parse(read("districts", wired).record).wiring).toEqual({
      conductor: "1.5 mm2 flexible",
      lengthMm: 8_000,
      temperatureC: 20,
    });
  });

  it.each([
    [OUTPUTS, "A Left", /code, what it can give in mA/],
    [OUTPUTS, ";", /one output at least/],
    [STOPS, "west 0", /two places at least/],
    [STOPS, "west; east 10", /distance in mm/],
  ])("says how a list is written where it is not", (form, text, says) => {
    expect(form.read(text)).toMatch(says);
  });

  it.each([
    [OUTPUTS, OUTPUTS.example],
    [STOPS, STOPS.example],
  ])("reads a list as its example shows it", (form, text) => {
    const parts = form.read(text);
    expect(typeof parts).not.toBe("string");
    expect(form.write(parts as unknown[])).toBe(text);
  });
});

describe("a row that two change at once", () => {
  const first = { code: "B1", name: "Bay one", lengthMm: "2800", note: "" };

  it("follows the other in what only they changed, and keeps what was typed, with theirs beside it", () => {
    const mine = { ...first, name: "Bay one, mine", lengthMm: "2810" };
    const latest = { ...first, name: "Bay one, theirs", note: "swept" };
    expect(mergeCells(first, mine, latest)).toEqual({
      cells: { code: "B1", name: "Bay one, mine", lengthMm: "2810", note: "swept" },
      theirs: { name: "Bay one, theirs" },
    });
  });

  it("has nothing beside it where both made the same of a cell", () => {
    const same = { ...first, lengthMm: "2810" };
    expect(mergeCells(first, same, same)).toEqual({ cells: same, theirs: {} });
  });
});

describe("a row that is edited while others change it", () => {
  const opened = { name: "Bay", lengthMm: "2800" };
  const row = { first: opened, cells: { ...opened, name: "Bay, mine" }, version: 1, theirs: {} };

  test("goes on telling of their change after they change something else", () => {
    const once = followTheirs(row, { name: "Bay, theirs", lengthMm: "2800" }, 2);
    expect(once.theirs).toEqual({ name: "Bay, theirs" });
    const twice = followTheirs(once, { name: "Bay, theirs", lengthMm: "2900" }, 3);
    expect(twice).toMatchObject({
      cells: { name: "Bay, mine", lengthMm: "2900" },
      theirs: { name: "Bay, theirs" },
      version: 3,
    });
    expect(followTheirs(twice, { name: "Bay, mine", lengthMm: "2900" }, 4).theirs).toEqual({});
  });

  test("is edited while a cell differs, and a cell never touched counts as empty", () => {
    expect(isEdited(row)).toBe(true);
    expect(isEdited({ ...row, cells: opened })).toBe(false);
    expect(isEdited({ ...row, cells: { ...opened, note: "" } })).toBe(false);
  });
});
