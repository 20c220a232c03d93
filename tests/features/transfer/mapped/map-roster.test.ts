import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Decoder, Locomotive } from "../../../../shared/roster.ts";
import { mapRoster } from "../../../../src/features/transfer/mapped/map-roster.ts";
import { readFigure } from "../../../../src/features/transfer/mapped/read-figure.ts";
import { settleDecimalMark } from "../../../../src/features/transfer/mapped/read-number.ts";
import { suggestMapping } from "../../../../src/features/transfer/mapped/suggest.ts";
import { plainMapping } from "./plain-mapping.ts";

describe("a figure of a cell", () => {
  it.each([
    // the inch is 25.4 mm, the mile 1.609344 km: 1959 definitions, from memory
    ["8.5", "length", "in", 215.9],
    ['8"', "length", "mm", 203.2],
    ["60", "speed", "mph", 96.56064],
    ["21,5", "length", "cm", 215],
    ["0.35", "current", "A", 350],
    ["350 mA", "current", "A", 350],
    ["1.234,5", "length", "mm", 1_234.5],
    ["1,234.5", "length", "mm", 1_234.5],
    ["1 234", "length", "mm", 1_234],
    ["1'234'567", "length", "mm", 1_234_567],
    ["1,234,567", "length", "mm", 1_234_567],
    ["1.25", "length", "m", 1_250],
    ["1.250", "current", "A", 1_250],
    ["1.105,5", "length", "mm", 1_105.5],
    ["1 234,567", "length", "mm", 1_234.567],
    [".5", "current", "A", 500],
  ] as const)("%s as %s in %s", (text, quantity, unit, value) => {
    expect(readFigure(text, quantity, unit)).toEqual({ value });
  });

  it.each([
    ["1,250", /could be 1250 or 1\.25/],
    ["1.250", /could be 1250 or 1\.25: write it without the point/],
    ["21 5", /no number/],
    ["12.34,5", /no number/],
    ["about 12", /no number/],
    ["12 furlongs", /furlongs is no unit of a length: write mm, cm, m or in\./],
    ["1.2.3", /no number/],
    ["-5", /-5 is below 0/],
  ])("%s is refused, saying why", (text, says) => {
    expect((readFigure(text, "length", "mm") as { fault: string }).fault).toMatch(says);
  });
});

describe("a figure of which the sheet shows the decimal mark", () => {
  it.each([
    ["1.200", ",", 1_200],
    ["1.200", ".", 1.2],
    ["1,200", ",", 1.2],
    ["1,200", ".", 1_200],
  ] as const)("%s, its decimal mark being %s", (text, decimal, value) => {
    expect(readFigure(text, "current", "mA", decimal)).toEqual({ value });
  });

  it("has it settled by all figures that leave no doubt, unless two of them differ", () => {
    expect(settleDecimalMark(["214,5", "1.200", "950", ""])).toBe(",");
    expect(settleDecimalMark(["1.234.567"])).toBe(",");
    expect(settleDecimalMark(["1,234.5"])).toBe(".");
    expect(settleDecimalMark(["0.350", "1.200"])).toBe(".");
    expect(settleDecimalMark(["21,5", "22.0"])).toBeNull();
    expect(settleDecimalMark(["1.200", "950", "none"])).toBeNull();
  });
});

describe("a roster written in any units", () => {
  const per = { mm: 1, cm: 10, m: 1_000, in: 25.4, mA: 1, A: 1_000, "km/h": 1, mph: 1.609344 };
  const engine = fc.record({
    lengthMm: fc.integer({ min: 40, max: 900 }),
    runningMa: fc.integer({ min: 0, max: 4_000 }),
    address: fc.option(fc.integer({ min: 1, max: 10_239 })),
  });

  it("reads back as it was", () => {
    fc.assert(
      fc.property(
        fc.array(engine, { minLength: 1, maxLength: 8 }),
        fc.constantFrom("mm", "cm", "m", "in"),
        fc.constantFrom("mA", "A"),
        fc.boolean(),
        (engines, length, current, comma) => {
          // as many places as it takes, with a point or a comma that cannot be taken for thousands
          const write = (value: number) => {
            const text = value.toFixed(7);
            return comma ? text.replace(".", ",") : text;
          };
          const rows = engines.map(({ lengthMm, runningMa, address }, i) => [
            `E${i}`,
            write(lengthMm / per[length]),
            write(runningMa / per[current]),
            address === null ? "" : String(address),
          ]);
          const { locomotives, decoders, faults } = mapRoster(
            [["Number", "L", "I", "DCC"], ...rows],
            plainMapping({
              length: { column: "L", unit: length, constantMm: null },
              running: { column: "I", unit: current, constantMa: null, source: "measured" },
              address: "DCC",
            }),
          );
          expect(faults).toEqual([]);
          expect(locomotives.map((one) => [one.lengthMm, one.running.ma])).toEqual(
            engines.map((one) => [one.lengthMm, one.runningMa]),
          );
          expect(decoders.map(({ address, addressKind }) => `${addressKind} ${address}`)).toEqual(
            engines.flatMap(({ address }) =>
              address === null ? [] : [`${address > 127 ? "long" : "short"} ${address}`],
            ),
          );
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("a sheet in which points part the thousands", () => {
  const figures = plainMapping({
    length: { column: "L", unit: "mm", constantMm: null },
    running: { column: "I", unit: "mA", constantMa: null, source: "measured" },
    stall: { column: "S", unit: "mA", constantMa: null, source: "measured" },
  });
  const heading = ["Number", "L", "I", "S"];

  it("is read by the commas of its other figures", () => {
    const rows = [heading, ["1", "214,5", "250", "1.200"], ["2", "1.105", "350", "950"]];
    const { locomotives, faults } = mapRoster(rows, figures);
    expect(faults).toEqual([]);
    expect(locomotives.map(({ lengthMm, stall }) => [lengthMm, stall.ma])).toEqual([
      [215, 1_200],
      [1_105, 950],
    ]);
    // headings that name no unit: 1.200 is no amp and a bit
    const named = [["Number", "Length", "Running", "Stall"], ...rows.slice(1)];
    expect(suggestMapping(named).mapping?.stall).toMatchObject({ column: "Stall", unit: "mA" });
  });

  it("is refused cell by cell where nothing else shows what its points are, or a figure comes to nothing", () => {
    const { faults } = mapRoster([heading, ["1", "1.105", "0,35", "950"]], figures);
    expect(faults.map(({ row, column, detail }) => [row, column, detail])).toEqual([
      [2, "I", expect.stringContaining("comes to 0.35 mA, and whole mA are kept")],
    ]);
    const doubtful = mapRoster([heading, ["1", "1.105", "350", "950"]], figures);
    expect(doubtful.faults.map(({ column }) => column)).toEqual(["L"]);
  });
});

describe("a sheet whose units stand in a column beside", () => {
  const sheet = [
    ["Number", "Length", "Unit", "Run", "in", "Stall"],
    ["1", "21.5", "cm", "0.35", "A", "900"],
    ["2", "8.5", "in", "240", "mA", "1200"],
    ["3", "190", "", "310", "", "800"],
  ];

  it("is guessed, and read row by row; a blank is the unit of the column", () => {
    const { mapping } = suggestMapping(sheet);
    expect(mapping?.length).toMatchObject({ column: "Length", unitColumn: "Unit" });
    expect(mapping?.running).toMatchObject({ column: "Run", unitColumn: "in" });
    expect(mapping?.stall.unitColumn).toBe(null);
    const { locomotives, faults } = mapRoster(
      sheet,
      plainMapping({
        length: { column: "Length", unit: "mm", unitColumn: "Unit", constantMm: null },
        running: { column: "Run", unit: "mA", unitColumn: "in", constantMa: null, source: "measured" },
      }),
    );
    expect(faults).toEqual([]);
    // 8.5 in = 215.9 mm, by the inch of 25.4 mm
    expect(locomotives.map(({ lengthMm, running }) => [lengthMm, running.ma])).toEqual([
      [215, 350],
      [216, 240],
      [190, 310],
    ]);
  });

  it("is refused at the unit that is none, and where there is no such column", () => {
    const mapping = (unitColumn: string) =>
      plainMapping({ length: { column: "Length", unit: "mm", unitColumn, constantMm: null } });
    const rows = [sheet[0] as string[], ["1", "21.5", "chains", "0.35", "A", "900"]];
    expect(mapRoster(rows, mapping("Unit")).faults.map(({ row, column }) => [row, column])).toEqual([
      [2, "Unit"],
    ]);
    expect(mapRoster(rows, mapping("Units")).faults.map(({ row, column }) => [row, column])).toEqual([
      [1, "Units"],
    ]);
  });
});

describe("a decoder that is new", () => {
  const stored = (decoders: readonly Decoder[]) => ({
    locomotives: new Map(),
    decoders: new Map(decoders.flatMap((one) => (one.locomotive ? [[one.locomotive, one] as const] : []))),
    decoderCodes: new Set(decoders.map(({ code }) => code)),
  });
  const codes = (rows: string[][], kept: readonly Decoder[] = []) =>
    mapRoster([["Number", "DCC"], ...rows], plainMapping({ address: "DCC" }), stored(kept)).decoders.map(
      ({ code, locomotive }) => [locomotive, code],
    );
  const other = (code: string, locomotive: string | null): Decoder => ({
    ...{ code, locomotive, addressKind: "long", address: 4_711, analogAllowed: true, note: "" },
  });

  it("takes no code that another has, in a locomotive or in none", () => {
    expect(codes([["9", "5"]], [other("dec-9", "34")])).toEqual([["9", "dec-9-2"]]);
    expect(codes([["9", "5"]], [other("dec-9", null), other("dec-9-2", "34")])).toEqual([["9", "dec-9-3"]]);
  });

  it("takes a code of its own where long codes begin alike", () => {
    const long = "a".repeat(38);
    const found = codes([
      [`${long}x1`, "5"],
      [`${long}y1`, "6"],
    ]);
    expect(found.map(([, code]) => code)).toEqual([`dec-${"a".repeat(36)}`, `dec-${"a".repeat(34)}-2`]);
  });
});

describe("a figure of the roster that is surer than the sheet's", () => {
  const engine = (source: Locomotive["running"]["source"]): Locomotive => ({
    ...{ code: "K1", name: "Kept", lengthMm: 190, maxSpeedKmh: null, owner: "", note: "" },
    running: { ma: 310, source },
    standing: { ma: 90, source },
    stall: { ma: 800, source },
    inrush: { ma: 350, source },
  });
  const bringing = (had: Locomotive["running"]["source"], source: Locomotive["running"]["source"]) =>
    mapRoster(
      [
        ["Number", "I", "S"],
        ["K1", "350", "800"],
      ],
      plainMapping({
        running: { column: "I", unit: "mA", constantMa: null, source },
        stall: { column: "S", unit: "mA", constantMa: null, source },
      }),
      {
        locomotives: new Map([["K1", engine(had)]]),
        decoders: new Map(),
        decoderCodes: new Set(),
      },
    );

  it("stays, and each that the sheet has otherwise is told", () => {
    const { locomotives, kept } = bringing("measured", "rule of thumb");
    expect(locomotives).toEqual([engine("measured")]);
    expect(kept).toEqual([
      {
        ...{ row: 2, column: "I", locomotive: "K1", figure: "running" },
        sentence:
          "Locomotive K1 keeps its running current of 310 mA, which is measured: the sheet's 350 mA would be a rule of thumb. If it is surer than that, say where the column is from.",
      },
    ]);
  });

  it("gives way to one as sure or surer", () => {
    for (const [had, source] of [
      ["measured", "measured"],
      ["rule of thumb", "leaflet"],
      ["rule of thumb", "rule of thumb"],
    ] as const) {
      const { locomotives, kept } = bringing(had, source);
      expect(locomotives).toMatchObject([{ running: { ma: 350, source }, stall: { ma: 800, source } }]);
      expect(kept).toEqual([]);
    }
  });
});
