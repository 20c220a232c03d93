import fc from "fast-check";
import { expect, it } from "vitest";
import { decoder, locomotive, rake } from "../../../shared/roster.ts";
import { train } from "../../../shared/timetable.ts";
import { ADDRESS_KINDS, FIGURE_SOURCES, LOCOMOTIVE_POSITIONS } from "../../../shared/vocabulary.ts";
import {
  DECODER_COLUMNS,
  LOCOMOTIVE_COLUMNS,
  RAKE_COLUMNS,
} from "../../../src/features/transfer/csv/columns.ts";
import { fromRecordSheet, toRecordSheet } from "../../../src/features/transfer/csv/record-sheet.ts";
import { readSheet, writeSheet } from "../../../src/features/transfer/csv/sheet.ts";
import { fromTrainSheet, toTrainSheet } from "../../../src/features/transfer/csv/train-sheet.ts";

// What a spreadsheet, a quote or a list might trip over, besides any text. No outside source: common practice.
const tricky = fc.string({
  unit: fc.constantFrom(
    "=",
    "+",
    "-",
    "@",
    "'",
    '"',
    ",",
    ";",
    "\\",
    "\n",
    "\r",
    "\t",
    " ",
    "x",
    "é",
    "\uFF1D",
  ),
});
const note = fc.oneof(tricky, fc.string({ unit: "grapheme" })).map((text) => text.slice(0, 100));
const named = note.map((text) => text.trim()).filter((text) => text.length > 0);
const code = fc.stringMatching(/^[A-Za-z0-9Ä][A-Za-z0-9ß._-]{0,9}$/);
const codes = fc.uniqueArray(code, { maxLength: 3 });
const figure = fc.record({ ma: fc.nat(100_000), source: fc.constantFrom(...FIGURE_SOURCES) });
const length = fc.integer({ min: 1, max: 1_000_000 });
const time = fc
  .record({ h: fc.nat(30), m: fc.nat(59) })
  .map(({ h, m }) => `${h}:${String(m).padStart(2, "0")}`);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const unique = <T extends { code: string }>(records: fc.Arbitrary<T>) =>
  fc.uniqueArray(records, { selector: (each) => each.code, maxLength: 5 });

const SHEETS = [
  {
    name: "locomotives",
    columns: LOCOMOTIVE_COLUMNS,
    schema: locomotive,
    records: unique(
      fc.record({
        ...{
          code,
          name: named,
          lengthMm: length,
          running: figure,
          standing: figure,
          stall: figure,
          inrush: figure,
        },
        ...{ maxSpeedKmh: maybe(fc.double({ min: 0.001, max: 500, noNaN: true })), owner: note, note },
      }),
    ),
  },
  {
    name: "decoders",
    columns: DECODER_COLUMNS,
    schema: decoder,
    records: unique(
      fc
        .record({
          ...{ code, locomotive: maybe(code), addressKind: fc.constantFrom(...ADDRESS_KINDS) },
          ...{ address: fc.integer({ min: 1, max: 127 }), analogAllowed: fc.boolean(), note },
        })
        .map((each) => (each.addressKind === "long" ? { ...each, address: each.address + 127 } : each)),
    ),
  },
  {
    name: "rakes",
    columns: RAKE_COLUMNS,
    schema: rake,
    records: unique(
      fc.record({
        ...{ code, name: named, lengthMm: length, vehicles: fc.integer({ min: 1, max: 200 }) },
        ...{ lighting: figure, inrush: figure, owner: note, note },
      }),
    ),
  },
];

it.each(SHEETS)("$name written as CSV and read again are what they were", ({ columns, schema, records }) => {
  fc.assert(
    fc.property(records as fc.Arbitrary<{ code: string }[]>, (written) => {
      const text = writeSheet(toRecordSheet(columns, written));
      const { drafts } = fromRecordSheet(columns, readSheet(text), new Map());
      expect(drafts.map((draft) => schema.parse(draft))).toEqual(written);
    }),
  );
});

const tag = named.map((text) => text.slice(0, 40).trim()).filter((text) => text.length > 0);
const entry = fc.record({ section: code, arrive: maybe(time), depart: maybe(time) });
const trains = unique(
  fc.record({
    ...{ code, name: named, priority: fc.integer({ min: 1, max: 9 }), lengthMm: maybe(length) },
    ...{
      earlierMinutes: fc.double({ min: 0, max: 1_440, noNaN: true }).map(Math.abs),
      laterMinutes: fc.nat(1_440),
    },
    motivePower: fc.array(
      fc.record({ locomotive: code, position: fc.constantFrom(...LOCOMOTIVE_POSITIONS) }),
      {
        maxLength: 3,
      },
    ),
    ...{
      rakes: codes,
      placedAt: maybe(time),
      removedAt: maybe(time),
      requires: fc.array(tag, { maxLength: 3 }),
    },
    ...{ path: fc.array(entry, { minLength: 2, maxLength: 6 }), note },
  }),
);

it("trains written as CSV and read again are what they were", () => {
  fc.assert(
    fc.property(trains, (written) => {
      const text = writeSheet(toTrainSheet(written));
      const { drafts } = fromTrainSheet(readSheet(text), new Map());
      expect(drafts.map((draft) => train.parse(draft))).toEqual(written);
    }),
  );
});

it("no cell starts as a formula does (OWASP, CSV injection)", () => {
  fc.assert(
    fc.property(fc.array(tricky, { minLength: 1 }), (cells) => {
      const [row = []] = readRaw(writeSheet([cells]));
      for (const cell of row) expect(cell).not.toMatch(/^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/);
    }),
  );
});

/** Cells as a spreadsheet shows them: by the rules of RFC 4180 alone, apostrophes left on. */
function readRaw(text: string): string[][] {
  const rows: string[][] = [[]];
  const body = text.replace(/^\uFEFF/, "").replace(/\r\n$/, "");
  for (const [, quoted, plain, end] of body.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    rows.at(-1)?.push(quoted?.replaceAll('""', '"') ?? plain ?? "");
    if (end === "\r\n") rows.push([]);
    if (end === "") break;
  }
  return rows;
}
