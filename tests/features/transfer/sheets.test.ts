import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;
let empty: string;

beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
  empty = await makeClub(app, "south", null);
});
afterAll(() => app.close());

const read = async (url: string): Promise<string> => (await app.request.get(url).expect(200)).text;
const send = (url: string, text: string | Buffer, query = "") =>
  app.request
    .post(url + query)
    .set("content-type", "text/csv")
    .send(text);
const exportOf = async (url: string, part: string) =>
  (await app.request.get(`${url}/export?parts=${part}`).expect(200)).body[part];

describe("a sheet is CSV as RFC 4180 has it", () => {
  it("in UTF-8, said to be CSV with a heading, lines ended by CRLF", async () => {
    const { headers, text } = await app.request.get(`${club}/rakes.csv`).expect(200);
    expect(headers["content-type"]).toBe("text/csv; charset=utf-8; header=present");
    expect(text.startsWith("\uFEFFcode,name,lengthMm,vehicles,")).toBe(true);
    expect(text.endsWith("\r\n")).toBe(true);
    expect(text.split("\r\n")).toHaveLength(4);
  });

  it("with formulas made harmless (OWASP, CSV injection), and given back as they were", async () => {
    const text = await read(`${club}/locomotives.csv`);
    const rows = parse(text, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.find(({ code }) => code === "T3")?.note).toBe("'=SUM(A1)");
    await send(`${club}/locomotives.csv`, text).expect(200);
    const { body } = await app.request.get(`${club}/locomotives/T3`);
    expect([body.note, body.version]).toEqual(["=SUM(A1)", 1]);
  });
});

describe("sheets out of one club and into another make the same records", () => {
  it("locomotives, decoders, rakes, handsets and trains", async () => {
    const document = await app.request.get(`${club}/export`).expect(200);
    const { layout } = document.body;
    const timetables = [{ code: "winter", name: "Winter timetable", versions: [{ number: 2 }] }];
    await app.request.post(`${empty}/import`).send({ layout, timetables }).expect(200);
    const trains = "/timetables/winter/versions/2/trains.csv";
    for (const sheet of ["/locomotives.csv", "/decoders.csv", "/rakes.csv", "/handsets.csv", trains]) {
      const text = await read(club + sheet);
      const { body } = await send(empty + sheet, text).expect(200);
      expect(body.counts.reduce((sum: number, { made }: { made: number }) => sum + made, 0)).toBeGreaterThan(
        1,
      );
      expect(await read(empty + sheet)).toBe(text);
    }
    expect(await exportOf(empty, "roster")).toEqual(document.body.roster);
    expect(await exportOf(empty, "handsets")).toEqual(document.body.handsets);
    const [winter] = await exportOf(empty, "timetables");
    expect(winter.versions[0].trains).toEqual(document.body.timetables[0].versions[1].trains);
  });
});

describe("a sheet that comes in", () => {
  const url = () => `${club}/rakes.csv`;
  const rake = async (code: string) => (await app.request.get(`${club}/rakes/${code}`)).body;

  it("makes, changes and leaves alone, and tried out keeps nothing", async () => {
    const text = "name,code,lengthMm,owner\nTen wagons,R1,1000,\nLonger coaches,R2,950,\nNew,R3,100,Us\n";
    const tried = await send(url(), text, "?dryRun=true").expect(200);
    const counts = { kind: "rakes", made: 1, changed: 1, unchanged: 1 };
    expect(tried.body).toMatchObject({ dryRun: true });
    expect(tried.body.counts).toContainEqual(counts);
    expect((await rake("R2")).version).toBe(1);
    const done = await send(url(), text).expect(200);
    expect(done.body.counts).toContainEqual(counts);
    expect(await rake("R2")).toMatchObject({ name: "Longer coaches", version: 2 });
    expect(await rake("R3")).toMatchObject({ owner: "Us", vehicles: 1 });
  });

  it("keeps what a record has in the columns that it leaves out", async () => {
    await send(url(), "code,name,lengthMm\nR2,Lit coaches,900\n").expect(200);
    expect(await rake("R2")).toMatchObject({ vehicles: 3, lighting: { ma: 45, source: "measured" } });
    await send(url(), "code,name,lengthMm,lightingMa\nR2,Lit coaches,900,\n").expect(422);
  });

  it("may have another order of columns, bare line ends, no mark, empty rows at its end, and truths in capitals", async () => {
    const text = "address,code,addressKind,analogAllowed\n5,X5,short,TRUE\n,,,\n\n";
    await send(`${club}/decoders.csv`, text).expect(200);
    const { body } = await app.request.get(`${club}/decoders/X5`);
    expect(body).toMatchObject({ address: 5, analogAllowed: true, locomotive: null });
  });

  it("may end its rows in several ways at once, as sheets put together by hand do", async () => {
    const text = "code,name,lengthMm\r\nR1,A,1\nR2,B,2\r\n,,\n\r\nR8,C,3\r";
    const { body } = await send(url(), text, "?dryRun=true").expect(200);
    expect(body.counts).toContainEqual({ kind: "rakes", made: 1, changed: 2, unchanged: 0 });
  });

  it("with both cells of a current blank is refused at each of them", async () => {
    const heading =
      "code,name,lengthMm,runningMa,runningSource,standingMa,standingSource,stallMa,stallSource,inrushMa,inrushSource";
    const row = "E9,A,200,,,80,measured,900,measured,600,measured";
    const { status, body } = await send(`${club}/locomotives.csv`, `${heading}\n${row}\n`);
    expect(status).toBe(422);
    const places = body.errors.map(({ column, detail }: Record<string, string>) => [column, detail]);
    expect(places).toEqual([
      ["runningMa", "Is missing: it must be a number."],
      ["runningSource", expect.stringContaining("leaflet")],
    ]);
  });

  it.each([
    ["a column that is not one", "code,name,lengthMm,colour\nR9,A,1,red\n", 1, "colour", "no column colour"],
    ["a required column missing", "code,lengthMm\nR9,1\n", 1, "name", "column name is missing"],
    ["a column twice", "code,name,lengthMm,name\nR9,A,1,B\n", 1, "name", "second time"],
    ["tabs between the cells", "code\tname\tlengthMm\nR9\tA\t1\n", 1, undefined, "tabs"],
    ["semicolons between the cells", "code;name;lengthMm\nR9;A;1\n", 1, undefined, "semicolons"],
    ["no heading", "", 1, undefined, "empty"],
    [
      "too few cells in a row",
      "code,name,lengthMm\nR1,A,1\nR9,A\n",
      3,
      undefined,
      "2 cells and the heading 3",
    ],
    [
      "a number that is none",
      "code,name,lengthMm\nR1,A,1\nR9,A,long\n",
      3,
      "lengthMm",
      "Must be a number, not a text",
    ],
    ["a required cell empty", "code,name,lengthMm\nR9,,1\n", 2, "name", "Is missing"],
    [
      "a negative current",
      "code,name,lengthMm,lightingMa,lightingSource\nR9,A,1,-5,measured\n",
      2,
      "lightingMa",
      "at least 0",
    ],
    [
      "a word that is not in the list",
      "code,name,lengthMm,lightingMa,lightingSource\nR9,A,1,5,guess\n",
      2,
      "lightingSource",
      "rule of thumb",
    ],
    ["a code that comes twice", "code,name,lengthMm\nR8,A,1\nR9,A,1\nR8,B,1\n", 4, "code", "second time"],
  ])("with %s is refused by row and column, and nothing is kept", async (_, text, row, column, says) => {
    const before = await read(url());
    const { status, body } = await send(url(), text);
    expect([status, body.code]).toEqual([422, "unprocessable"]);
    expect([body.errors[0].row, body.errors[0].column]).toEqual([row, column]);
    expect(body.errors[0].detail).toContain(says);
    expect(body.detail).toContain(`row ${row}`);
    expect(await read(url())).toBe(before);
  });

  it("with rows in cells of several lines counts rows as a spreadsheet does", async () => {
    const text = 'code,name,lengthMm,note\nR8,A,1,"two\nlines"\nR9,A,0,x\n';
    const { body } = await send(url(), text);
    expect([body.errors[0].row, body.errors[0].column]).toEqual([3, "lengthMm"]);
  });

  it("with a reference to what is not there is refused at its cell", async () => {
    const text = "code,locomotive,addressKind,address\nX1,T3,short,9\nX2,E99,short,10\n";
    const { status, body } = await send(`${club}/decoders.csv`, text);
    expect([status, body.errors]).toEqual([
      422,
      [
        {
          pointer: "/body/3/locomotive",
          row: 3,
          column: "locomotive",
          detail: "No locomotive E99: make it first, or name one of E7, T3.",
        },
      ],
    ]);
    const places = await send(
      `${club}/handsets.csv`,
      "code,name,commandSystem,kind,places\nH5,H,blue,fixed,mid;moon\n",
    );
    expect([places.body.errors[0].row, places.body.errors[0].column]).toEqual([2, "places"]);
  });

  it("that is not CSV, not UTF-8, or not said to be CSV is refused as such", async () => {
    const quotes = await send(url(), 'code,name,lengthMm\nR9,"A,1\n');
    expect([quotes.status, quotes.body.code]).toEqual([400, "validation-failed"]);
    expect(quotes.body.detail).toContain("Row 2 is not CSV");
    const latin = await send(url(), Buffer.from("code,name,lengthMm\nR9,Caf\xe9,1\n", "latin1"));
    expect([latin.status, latin.body.detail]).toEqual([400, expect.stringContaining("save it as CSV UTF-8")]);
    await app.request.post(url()).send({ code: "R9" }).expect(415);
    await app.request.post(`${club}/rakes`).set("content-type", "text/csv").send("code\n").expect(415);
  });

  it("of a club that is not there is not found", async () => {
    await send("/api/clubs/nowhere/rakes.csv", "code,name,lengthMm\n").expect(404);
    await app.request.get("/api/clubs/nowhere/rakes.csv").expect(404);
  });
});

describe("a sheet of trains", () => {
  const HEAD = "code,name,rakes,section,arrive,depart\n";
  const url = (version = 2) => `${club}/timetables/winter/versions/${version}/trains.csv`;

  it("has one row an entry of the path, the whole train said in its first", async () => {
    const rows = parse(await read(url()), { bom: true, columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(10);
    expect(rows[5]).toMatchObject({
      code: "102",
      locomotives: "T3;E7:rear",
      rakes: "R2;R1",
      section: "E1",
      depart: "23:50",
    });
    expect(rows[6]).toMatchObject({
      code: "102",
      locomotives: "",
      rakes: "",
      section: "L2",
      arrive: "",
      depart: "",
    });
    expect(rows[7]).toMatchObject({ arrive: "24:05:30", depart: "24:05:30" });
  });

  it("may leave the code out after the first row", async () => {
    const text = `${HEAD}300,A,R1,W1,,9:00\n,,,L1,,\n,,,M1,9:05,\n301,B,R1,W1,,9:30\n301,,,L1,9:35,\n`;
    const { body } = await send(url(), text).expect(200);
    expect(body.counts).toContainEqual({ kind: "trains", made: 2, changed: 0, unchanged: 0 });
    const train = await app.request.get(`${club}/timetables/winter/versions/2/trains/300`);
    expect(train.body.path).toEqual([
      { section: "W1", arrive: null, depart: "09:00" },
      { section: "L1", arrive: null, depart: null },
      { section: "M1", arrive: "09:05", depart: null },
    ]);
  });

  it.each([
    ["a first row without a code", `${HEAD},A,R1,W1,,9:00\n`, 2, "code", "belongs to no train"],
    [
      "what is said of the train in a later row",
      `${HEAD}400,A,R1,W1,,9:00\n400,B,,L1,9:05,\n`,
      3,
      "name",
      "its first row, 2",
    ],
    ["a section that is not there", `${HEAD}400,A,R1,W1,,9:00\n,,,L9,9:05,\n`, 3, "section", "No section L9"],
    ["a path without an arrival", `${HEAD}400,A,R1,W1,,9:00\n,,,L1,,\n`, 3, "arrive", "ends with an arrival"],
    ["a time that is none", `${HEAD}400,A,R1,W1,,9.00\n,,,L1,9:05,\n`, 2, "depart", "19:35"],
    [
      "a rake that is not there",
      `${HEAD}399,A,R1,W1,,9:00\n,,,L1,9:05,\n400,A,R1;R77,W1,,9:00\n,,,L1,9:05,\n`,
      4,
      "rakes",
      "No rake R77",
    ],
    ["a path of one section", `${HEAD}400,A,R1,W1,,9:00\n`, 2, undefined, "at least 2"],
  ])("with %s is refused by row and column", async (_, text, row, column, says) => {
    const before = await read(url());
    const { status, body } = await send(url(), text);
    expect([status, body.errors[0].row, body.errors[0].column]).toEqual([422, row, column]);
    expect(body.errors[0].detail).toContain(says);
    expect(await read(url())).toBe(before);
  });

  it("does not come into an issued version, nor into one that is not there", async () => {
    const issued = await send(url(1), await read(url(1)));
    expect([issued.status, issued.body.code]).toEqual([409, "version-issued"]);
    await send(url(9), HEAD).expect(404);
    await app.request.get(url(9)).expect(404);
  });
});
