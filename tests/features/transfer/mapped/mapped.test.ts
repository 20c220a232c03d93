import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RosterMapping } from "../../../../shared/mapped-import.ts";
import type { Locomotive } from "../../../../shared/roster.ts";
import { testApp } from "../../../support/test-app.ts";
import { makeClub } from "../../example-club.ts";
import { plainMapping } from "./plain-mapping.ts";

let served: Awaited<ReturnType<typeof testApp>>;
beforeAll(async () => {
  served = await testApp();
  await makeClub(served, "north");
});
afterAll(() => served.close());

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

  it("leaves the decoder of another locomotive alone, whatever its code, and what was measured as well", async () => {
    // T3 is the example's, and has no decoder; measured at 350 mA
    const before = {
      code: "dec-N9",
      locomotive: "T3",
      addressKind: "short",
      address: 9,
      analogAllowed: true,
    };
    await served.request.post("/api/clubs/north/decoders").send(before).expect(201);
    const mapping = plainMapping({
      address: "DCC",
      running: { column: "mA", unit: "mA", constantMa: null, source: "rule of thumb" },
    });
    const { body } = await bring("Number,DCC,mA\nN9,5,300\nT3,,400\n", mapping, true).expect(200);
    expect(body.kept).toMatchObject([{ row: 3, column: "mA", locomotive: "T3", figure: "running" }]);
    await bring("Number,DCC,mA\nN9,5,300\nT3,,400\n", mapping, false).expect(200);
    const read = async (path: string) =>
      (await served.request.get(`/api/clubs/north/${path}`).expect(200)).body;
    expect(await read("decoders/dec-N9")).toMatchObject(before);
    expect(await read("decoders/dec-N9-2")).toMatchObject({ locomotive: "N9", address: 5 });
    expect((await read("locomotives/T3")).running).toEqual({ ma: 350, source: "measured" });
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
