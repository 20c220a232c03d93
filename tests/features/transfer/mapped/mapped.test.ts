import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RosterMapping } from "../../../../shared/mapped-import.ts";
import type { Locomotive } from "../../../../shared/roster.ts";
import { mapRoster } from "../../../../src/features/transfer/mapped/map-roster.ts";
import { readFigure } from "../../../../src/features/transfer/mapped/read-figure.ts";
import { testApp } from "../../../support/test-app.ts";
import { makeClub } from "../../example-club.ts";

let served: Awaited<ReturnType<typeof testApp>>;
beforeAll(async () => {
  served = await testApp();
  await makeClub(served, "north");
});
afterAll(() => served.close());

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
    [".5", "current", "A", 500],
  ] as const)("%s as %s in %s", (text, quantity, unit, value) => {
    expect(readFigure(text, quantity, unit)).toEqual({ value });
  });

  it.each([
    ["1,250", /could be 1250 or 1\.25/],
    ["about 12", /no number/],
    ["12 furlongs", /furlongs is no unit/],
    ["1.2.3", /no number/],
    ["-5", /no number/],
  ])("%s is refused, saying why", (text, says) => {
    expect((readFigure(text, "length", "mm") as { fault: string }).fault).toMatch(says);
  });
});

const plainMapping = (given: Partial<RosterMapping>): RosterMapping => {
  const current = { column: null, unit: "mA", constantMa: 300, source: "rule of thumb" } as const;
  return {
    code: "Number",
    name: null,
    length: { column: null, unit: "mm", constantMm: 200 },
    running: current,
    standing: current,
    stall: current,
    inrush: current,
    maxSpeed: { column: null, unit: "km/h" },
    address: null,
    owner: null,
    note: null,
    ...given,
  };
};

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

const SHEET = `\ufeffLoco no;Description;Length over buffers (cm);Run amps;Stall current A;DCC address;Top speed mph;Owner
47 11;Goods engine, black;21,5;0,35;0,9;3;60;
D8;Diesel;22.0;420 mA;;4711;;Fenella
;;;;;;;
T/9;Tank engine;8 in;0.28;0.8;3 L;45;
`;
const columns = (text: string) => served.request.post("/api/clubs/north/roster-sheet/columns").send({ text });
const bring = (text: string, mapping: RosterMapping, dryRun: boolean) =>
  served.request.post("/api/clubs/north/roster-sheet").send({ text, mapping, dryRun });

describe("a spreadsheet with columns of its own", () => {
  it("is looked at: separator, headings, units, samples", async () => {
    const { body } = await columns(SHEET).expect(200);
    expect(body).toMatchObject({
      rows: 3,
      mapping: {
        code: "Loco no",
        name: "Description",
        length: { column: "Length over buffers (cm)", unit: "cm" },
        running: { column: "Run amps", unit: "A" },
        stall: { column: "Stall current A", unit: "A" },
        standing: { column: null },
        maxSpeed: { column: "Top speed mph", unit: "mph" },
        address: "DCC address",
        owner: "Owner",
      },
    });
    expect(body.samples[0][0]).toBe("47 11");
  });

  it("names row and column of all that is missing or cannot be, and keeps nothing", async () => {
    const { mapping } = (await columns(SHEET).expect(200)).body;
    const { body } = await bring(SHEET, mapping, false).expect(422);
    const at = body.errors.map(({ row, column }: { row: number; column: string }) => `${row} ${column}`);
    expect(at).toEqual(expect.arrayContaining(["3 Stall current A", "5 DCC address", "2 Loco no"]));
    const { body: kept } = await served.request.get("/api/clubs/north/locomotives").expect(200);
    expect(kept.items.map(({ code }: Locomotive) => code)).not.toContain("D8");
  });

  it("is tried, then brought in: locomotives and their decoders, in our units", async () => {
    const { mapping } = (await columns(SHEET).expect(200)).body;
    const whole: RosterMapping = {
      ...mapping,
      running: { ...mapping.running, source: "measured" },
      standing: { ...mapping.standing, constantMa: 100 },
      stall: { ...mapping.stall, constantMa: 900 },
      inrush: { ...mapping.inrush, constantMa: 400 },
    };
    const text = SHEET.replace("3 L", "1234");
    const tried = (await bring(text, whole, true).expect(200)).body;
    expect(tried).toMatchObject({
      dryRun: true,
      counts: [
        { kind: "locomotives", made: 3 },
        { kind: "decoders", made: 3 },
      ],
    });
    await served.request.get("/api/clubs/north/locomotives/47-11").expect(404);
    const done = (await bring(text, whole, false).expect(200)).body;
    expect(done.locomotives).toEqual(tried.locomotives);
    const { body } = await served.request.get("/api/clubs/north/locomotives/47-11").expect(200);
    expect(body).toMatchObject({
      name: "Goods engine, black",
      lengthMm: 215,
      running: { ma: 350, source: "measured" },
      standing: { ma: 100, source: "rule of thumb" },
      stall: { ma: 900, source: "rule of thumb" },
      maxSpeedKmh: 96.56064,
    });
    expect((await served.request.get("/api/clubs/north/locomotives/T-9").expect(200)).body.lengthMm).toBe(
      203,
    );
    expect((await served.request.get("/api/clubs/north/decoders/dec-D8").expect(200)).body).toMatchObject({
      locomotive: "D8",
      addressKind: "long",
      address: 4_711,
    });
    const again = (await bring(text, whole, false).expect(200)).body;
    expect(again.counts).toMatchObject([
      { made: 0, unchanged: 3 },
      { made: 0, unchanged: 3 },
    ]);
  });

  it("changes what it says of a locomotive that is there, and keeps the rest: figures, owner, its decoder", async () => {
    const engine = {
      code: "K1",
      name: "Kept engine",
      lengthMm: 190,
      running: { ma: 310, source: "measured" },
      standing: { ma: 90, source: "measured" },
      stall: { ma: 800, source: "leaflet" },
      inrush: { ma: 350, source: "leaflet" },
      maxSpeedKmh: 80,
      owner: "Fenella",
      note: "runs hot",
    };
    const decoder = {
      code: "spare-7",
      locomotive: "K1",
      addressKind: "short",
      address: 7,
      analogAllowed: true,
    };
    await served.request.post("/api/clubs/north/locomotives").send(engine).expect(201);
    await served.request.post("/api/clubs/north/decoders").send(decoder).expect(201);
    const mapping = plainMapping({ length: { column: "cm", unit: "cm", constantMm: null }, address: "DCC" });
    await bring("Number,cm,DCC\nK1,19.5,4711\n", mapping, false).expect(200);
    const { body } = await served.request.get("/api/clubs/north/locomotives/K1").expect(200);
    expect(body).toMatchObject({ ...engine, lengthMm: 195 });
    const { body: fitted } = await served.request.get("/api/clubs/north/decoders/spare-7").expect(200);
    expect(fitted).toMatchObject({ ...decoder, addressKind: "long", address: 4_711 });
  });

  it("is refused where it is no sheet, or a column is not in it", async () => {
    const { body } = await bring("Number\n1\n", plainMapping({ name: "Nickname" }), true).expect(422);
    expect(body.errors).toMatchObject([{ row: 1, column: "Nickname" }]);
    await columns('Number\n"1\n').expect(400);
  });

  it("is refused where a comma of a figure has moved its row, or two columns have one heading", async () => {
    const mapping = plainMapping({ length: { column: "cm", unit: "cm", constantMm: null } });
    const moved = await bring("Number,cm,Name\nX1,14,5,Shunter\nX2,14\nX3,15,Tank,,\n", mapping, true).expect(
      422,
    );
    expect(moved.body.errors.map(({ row }: { row: number }) => row)).toEqual([2, 3]);
    const { body } = await bring("Number,cm,cm\nX1,14,15\n", mapping, true).expect(422);
    expect(body.errors).toMatchObject([
      { row: 1, column: "cm", detail: expect.stringContaining("Two columns") },
    ]);
  });

  it("cannot bring in the same number twice", async () => {
    const { body } = await bring("Number\nX1\nX1\n", plainMapping({}), true).expect(422);
    expect(body.errors).toMatchObject([{ row: 3, column: "Number" }]);
  });
});
