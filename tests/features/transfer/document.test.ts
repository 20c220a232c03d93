import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runSql } from "../../support/sql.ts";
import { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  app = await testApp();
});
afterAll(() => app.close());

let clubs = 0;

const exportOf = async (url: string, query = "") =>
  (await app.request.get(`${url}/export${query}`).expect(200)).body;
const importInto = (url: string, document: object, query = "") =>
  app.request.post(`${url}/import${query}`).send(document);

/** Rows in every table, and the sum of all versions: whatever is written changes one or the other. */
async function fingerprint(): Promise<string> {
  const { rows: tables } = await runSql<{ name: string }>(
    app.connection,
    "select table_name as name from information_schema.tables where table_schema = 'public' order by 1",
  );
  const counts: string[] = [];
  for (const { name } of tables) {
    const { rows } = await runSql<{ n: string; digest: string }>(
      app.connection,
      `select count(*) as n, md5(coalesce(string_agg(t::text, '' order by t::text), '')) as digest from ${name} t`,
    );
    counts.push(`${name} ${rows[0]?.n} ${rows[0]?.digest}`);
  }
  return counts.join("\n");
}

describe("a club's document", () => {
  it("imported into an empty club comes out again the same", async () => {
    const first = await makeClub(app, "first");
    const second = await makeClub(app, "second", null);
    const document = await exportOf(first);
    expect(document.layout.sections.length).toBe(exampleDocument.layout.sections.length);
    expect(document.timetables[0].versions).toHaveLength(2);
    const { body } = await importInto(second, document).expect(200);
    expect(await exportOf(second)).toEqual(document);
    expect(body.dryRun).toBe(false);
    expect(body.counts).toContainEqual({ kind: "sections", made: 7, changed: 0, unchanged: 0 });
    expect(body.counts).toContainEqual({ kind: "trains", made: 3, changed: 0, unchanged: 0 });
    expect(body.counts).toContainEqual({ kind: "timetableVersions", made: 2, changed: 0, unchanged: 0 });
  });

  it("imported again changes nothing, not even a version", async () => {
    const url = await makeClub(app, "again");
    const before = await fingerprint();
    for (const document of [await exportOf(url), exampleDocument]) {
      const { body } = await importInto(url, document).expect(200);
      for (const count of body.counts) expect(count).toMatchObject({ made: 0, changed: 0 });
    }
    expect(await fingerprint()).toBe(before);
  });

  it("is had in parts", async () => {
    const url = await makeClub(app, "parts");
    expect(Object.keys(await exportOf(url, "?parts=roster"))).toEqual(["roster"]);
    expect(Object.keys(await exportOf(url, "?parts=sessions,handsets")).sort()).toEqual([
      "handsets",
      "sessions",
    ]);
    await app.request.get(`${url}/export?parts=roster,moon`).expect(400);
  });

  it("changes what differs, makes what is new, and leaves the rest alone", async () => {
    const url = await makeClub(app, "merge");
    const [west] = exampleDocument.layout.places;
    const places = [
      { ...west, name: "Renamed" },
      { code: "new", name: "New" },
      exampleDocument.layout.places[1],
    ];
    const { body } = await importInto(url, { layout: { places } }).expect(200);
    expect(body.counts).toContainEqual({ kind: "places", made: 1, changed: 1, unchanged: 1 });
    const after = await exportOf(url, "?parts=layout");
    expect(after.layout.places.map(({ code, name }: Record<string, string>) => `${code} ${name}`)).toEqual([
      "east East yard",
      "mid Middle halt",
      "new New",
      "west Renamed",
    ]);
    expect(after.layout.sections).toHaveLength(7);
    const place = await app.request.get(`${url}/places/west`);
    expect(place.headers.etag).toBe('"2"');
  });

  it("tried out says what would happen, and keeps nothing", async () => {
    const url = await makeClub(app, "tried", null);
    const before = await fingerprint();
    const { body } = await importInto(url, exampleDocument, "?dryRun=true").expect(200);
    expect(body.dryRun).toBe(true);
    expect(body.counts).toContainEqual({ kind: "locomotives", made: 2, changed: 0, unchanged: 0 });
    expect(await fingerprint()).toBe(before);
  });

  it("may pass parts and places from one record to another", async () => {
    const url = await makeClub(app, "swap");
    const { layout, roster } = exampleDocument;
    const [panel] = layout.controllers;
    const [k1, k2] = panel?.outputs ?? [];
    const [q0, q1] = layout.selectors;
    const [x7, x3] = roster.decoders;
    await importInto(url, { roster: { decoders: [x7, { ...x3, locomotive: "T3" }] } }).expect(200);
    await importInto(url, {
      layout: {
        // K2 moves to a controller of its own, K1 goes, and both selectors follow
        controllers: [
          { ...panel, outputs: [{ ...k2, code: "K3" }] },
          { code: "other", name: "Other", transformerMa: 900, outputs: [k2] },
        ],
        selectors: [
          { ...q0, section: q1?.section, outputs: ["K3"] },
          { ...q1, section: q0?.section, outputs: ["K2"] },
        ],
      },
      roster: {
        decoders: [
          { ...x7, locomotive: "T3" },
          { ...x3, locomotive: "E7" },
        ],
      },
    }).expect(200);
    const after = await exportOf(url);
    expect(after.roster.decoders.map(({ locomotive }: { locomotive: string }) => locomotive)).toEqual([
      "E7",
      "T3",
    ]);
    expect(after.layout.selectors.map(({ section }: { section: string }) => section)).toEqual(["Q1", "Q0"]);
    expect(k1?.code).toBe("K1");
  });

  it("moves sessions into each other's hours", async () => {
    const url = await makeClub(app, "hours");
    const [march] = exampleDocument.sessions;
    const on = (code: string, day: string) => ({
      ...march,
      code,
      slots: march?.slots.map((slot) => ({
        ...slot,
        startsAt: slot.startsAt.replace("2027-03-20", day),
        endsAt: slot.endsAt.replace("2027-03-20", day),
      })),
    });
    await importInto(url, { sessions: [on("a", "2027-04-03"), on("b", "2027-04-10")] }).expect(200);
    const { body } = await importInto(url, {
      sessions: [on("b", "2027-04-03"), on("a", "2027-04-10")],
    }).expect(200);
    expect(body.counts).toEqual([{ kind: "sessions", made: 0, changed: 2, unchanged: 0 }]);
  });
});

describe("an import takes what a check would find", () => {
  it("a path over sections that are not linked, and times running backwards", async () => {
    const url = await makeClub(app, "faulty");
    const path = [
      { section: "W1", depart: "11:00" },
      { section: "E1", arrive: "10:00" },
    ];
    const trains = [{ code: "900", name: "Impossible", lengthMm: 100, path }];
    const versions = [{ number: 2, trains }];
    const [winter] = exampleDocument.timetables;
    await importInto(url, { timetables: [{ ...winter, versions }] }).expect(200);
    const check = await app.request.post(`${url}/sessions/march/slots/first/check`).expect(200);
    const codes = check.body.findings.map(({ code }: { code: string }) => code);
    expect(codes).toEqual(expect.arrayContaining(["path-not-linked", "path-times-backwards"]));
    await app.request
      .post(`${url}/timetables/winter/versions/2/trains`)
      .send({ ...trains[0], code: "901" })
      .expect(422);
  });
});

describe("an import is all or nothing", () => {
  const [winter] = exampleDocument.timetables;
  const [march] = exampleDocument.sessions;
  const [, train] = winter?.versions[1]?.trains ?? [];
  const place = { code: "fine", name: "Fine" };

  it.each([
    [
      "an unknown reference",
      { layout: { places: [place], links: [{ code: "x", from: "L1", to: "L9" }] } },
      ["/layout/links/0/to"],
    ],
    [
      "a reference to what only another club has",
      { layout: { places: [place], links: [{ code: "x", from: "L1", to: "elsewhere" }] } },
      ["/layout/links/0/to"],
    ],
    ["a code that comes twice", { layout: { places: [place, place] } }, ["/layout/places/1/code"]],
    [
      "a changeover section that is not wired for it",
      {
        layout: { places: [place], sections: [{ ...exampleDocument.layout.sections[0], changeover: true }] },
      },
      ["/layout/sections/0/changeover"],
    ],
    [
      "a decoder in a locomotive that has one",
      {
        layout: { places: [place] },
        roster: { decoders: [{ code: "x", locomotive: "E7", addressKind: "short", address: 1 }] },
      },
      ["/roster/decoders/0/locomotive"],
    ],
    [
      "a second selector of a section",
      { layout: { places: [place], selectors: [{ code: "x", section: "Q1", outputs: ["K1"] }] } },
      ["/layout/selectors/0/section"],
    ],
    [
      "an output that stored selectors reach, gone",
      {
        layout: {
          places: [place],
          controllers: [
            {
              ...exampleDocument.layout.controllers[0],
              outputs: [{ code: "K1", name: "Left", ratingMa: 800 }],
            },
          ],
        },
      },
      ["/layout/controllers/0"],
    ],
    [
      "an output that brought selectors reach, gone",
      {
        layout: {
          places: [place],
          controllers: [
            {
              ...exampleDocument.layout.controllers[0],
              outputs: [{ code: "K1", name: "Left", ratingMa: 800 }],
            },
          ],
          selectors: exampleDocument.layout.selectors,
        },
      },
      ["/layout/selectors/0/outputs/1", "/layout/selectors/1/outputs/0"],
    ],
    [
      "slots that overlap stored ones",
      { layout: { places: [place] }, sessions: [{ ...march, code: "x" }] },
      ["/sessions/0/slots/0/startsAt", "/sessions/0/slots/1/startsAt"],
    ],
    [
      "an hour that never comes",
      {
        layout: { places: [place] },
        sessions: [{ ...march, slots: [{ ...march?.slots[0], startsAt: "2027-03-28T01:30" }] }],
      },
      ["/sessions/0/slots/0/startsAt"],
    ],
    [
      "a path without times at its ends",
      {
        layout: { places: [place] },
        timetables: [
          {
            code: "x",
            name: "X",
            versions: [{ number: 1, trains: [{ ...train, path: [{ section: "W1" }, { section: "L1" }] }] }],
          },
        ],
      },
      ["/timetables/0/versions/0/trains/0/path/0/depart", "/timetables/0/versions/0/trains/0/path/1/arrive"],
    ],
    [
      "a version that comes twice",
      {
        layout: { places: [place] },
        timetables: [{ code: "x", name: "X", versions: [{ number: 1 }, { number: 1 }] }],
      },
      ["/timetables/0/versions/1/number"],
    ],
    [
      "a change of an issued version's train",
      {
        layout: { places: [place] },
        timetables: [
          {
            ...winter,
            versions: [
              { number: 1, state: "issued", note: "As printed", trains: [{ ...train, code: "101" }] },
            ],
          },
        ],
      },
      ["/timetables/0/versions/0/trains/0"],
    ],
    [
      "a train more in an issued version",
      {
        layout: { places: [place] },
        timetables: [{ ...winter, versions: [{ number: 1, state: "issued", trains: [train] }] }],
      },
      ["/timetables/0/versions/0/trains/0"],
    ],
    [
      "an issued version as a draft",
      { layout: { places: [place] }, timetables: [{ ...winter, versions: [{ number: 1 }] }] },
      ["/timetables/0/versions/0/state"],
    ],
    [
      "text that cannot be kept",
      { layout: { places: [{ ...place, note: "\0" }] } },
      ["/layout/places/0/note"],
    ],
  ])("with %s nothing is kept, and the place is named", async (name, document, pointers) => {
    if (name === "a reference to what only another club has") {
      const other = await makeClub(app, "other");
      const section = { ...exampleDocument.layout.sections[1], code: "elsewhere" };
      await app.request.post(`${other}/sections`).send(section).expect(201);
    }
    const url = await makeClub(app, `club${clubs++}`);
    const before = await fingerprint();
    for (const query of ["", "?dryRun=true"]) {
      const { status, body } = await importInto(url, document, query);
      expect([status, body.code]).toEqual([422, "unprocessable"]);
      expect(body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual(
        pointers.map((pointer) => `/body${pointer}`),
      );
      expect(body.detail).toContain("Nothing was imported");
    }
    expect(await fingerprint()).toBe(before);
  });

  it("with a hundred and fifty mistakes a hundred are named", async () => {
    const url = await makeClub(app, "many");
    const links = Array.from({ length: 150 }, (_, i) => ({ code: `k${i}`, from: "L1", to: `no${i}` }));
    const { status, body } = await importInto(url, { layout: { links } });
    expect([status, body.errors.length]).toEqual([422, 100]);
    expect(body.detail).toContain("150 places are wrong");
  });

  it("a document that is not one is refused by its form", async () => {
    const url = await makeClub(app, "form", null);
    const { status, body } = await importInto(url, {
      layout: { sections: [{ code: "x" }], moons: [] },
      roster: [],
    });
    expect([status, body.code]).toEqual([400, "validation-failed"]);
    const pointers = body.errors.map(({ pointer }: { pointer: string }) => pointer);
    expect(pointers).toEqual(
      expect.arrayContaining(["/body/layout/sections/0/name", "/body/layout/moons", "/body/roster"]),
    );
  });

  it("a list longer than a club can hold is refused at once", async () => {
    const url = await makeClub(app, "long", null);
    const areas = Array.from({ length: 51 }, (_, i) => ({ code: `a${i}`, name: "A" }));
    const { status, body } = await importInto(url, { layout: { areas } });
    expect([status, body.errors[0].pointer]).toEqual([400, "/body/layout/areas"]);
  });

  it("and so is one that would fill the club beyond what it can hold", async () => {
    const url = await makeClub(app, "full", null);
    const areas = (from: number, to: number) =>
      Array.from({ length: to - from }, (_, i) => ({ code: `a${from + i}`, name: "A" }));
    await importInto(url, { layout: { areas: areas(0, 50) } }).expect(200);
    const { status, body } = await importInto(url, { layout: { areas: areas(49, 51) } });
    expect([status, body.errors[0].pointer]).toEqual([422, "/body/layout/areas"]);
    const one = await app.request.post(`${url}/areas`).send({ code: "more", name: "M" });
    expect([one.status, one.body.code]).toEqual([409, "conflict"]);
  });

  it("of a club that is not there is not found", async () => {
    await importInto("/api/clubs/nowhere", {}).expect(404);
    await app.request.get("/api/clubs/nowhere/export").expect(404);
  });
});

describe("imports at the same time", () => {
  it("of the same document end as one import of it", async () => {
    const url = await makeClub(app, "race", null);
    const answers = await Promise.all(Array.from({ length: 4 }, () => importInto(url, exampleDocument)));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 200]);
    const made = answers.map(
      ({ body }) => body.counts.find(({ kind }: { kind: string }) => kind === "sections").made,
    );
    expect(made.sort()).toEqual([0, 0, 0, 7]);
  });
});
