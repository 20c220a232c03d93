import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let trains: string;

beforeAll(async () => {
  app = await testApp();
  trains = `${await makeClub(app, "north")}/timetables/winter/versions/2/trains`;
});
afterAll(() => app.close());

const PATH = [
  { section: "W1", depart: "10:00" },
  { section: "L1" },
  { section: "M1", arrive: "10:04", depart: "10:06" },
  { section: "L2" },
  { section: "E1", arrive: "10:10" },
];
const train = { code: "200", name: "Trial", rakes: ["R1"], path: PATH };

/** The path with one entry changed. */
const pathWith = (at: number, entry: object) =>
  PATH.map((each, i) => (i === at ? { ...each, ...entry } : each));

describe("a train is refused, new or changed, and the place named:", () => {
  it.each([
    [
      "a first entry without departure",
      { path: pathWith(0, { depart: null }) },
      "/path/0/depart",
      "starts with a departure",
    ],
    [
      "a last entry without arrival",
      { path: pathWith(4, { arrive: null }) },
      "/path/4/arrive",
      "ends with an arrival",
    ],
    [
      "a call with an arrival alone",
      { path: pathWith(2, { depart: null }) },
      "/path/2/depart",
      "both, or neither",
    ],
    [
      "a call with a departure alone",
      { path: pathWith(2, { arrive: null }) },
      "/path/2/arrive",
      "both, or neither",
    ],
    [
      "a departure before the arrival",
      { path: pathWith(2, { depart: "10:03" }) },
      "/path/2/depart",
      "at 10:04 before",
    ],
    [
      "an arrival before the last departure",
      { path: pathWith(4, { arrive: "10:05" }) },
      "/path/4/arrive",
      "at 10:06 before",
    ],
    [
      "a run that takes no time",
      { path: pathWith(4, { arrive: "10:06" }) },
      "/path/4/arrive",
      "at 10:06 before",
    ],
    [
      "the day before midnight taken for the one after",
      { path: pathWith(0, { depart: "23:59" }) },
      "/path/2/arrive",
      "at 23:59 before",
    ],
    [
      "sections that no link joins",
      { path: pathWith(3, { section: "Q0" }) },
      "/path/4/section",
      "No link leads from Q0 to E1",
    ],
    [
      "a one-way link the wrong way",
      {
        path: [
          { section: "Q1", depart: "9:00" },
          { section: "Q0", arrive: "9:01" },
        ],
      },
      "/path/1/section",
      "nothing is linked to Q1",
    ],
    [
      "a section that is not there",
      { path: pathWith(3, { section: "L9" }) },
      "/path/3/section",
      "No section L9: make it first, or name one of L1, L2",
    ],
    [
      "a locomotive that is not there",
      { motivePower: [{ locomotive: "E9" }] },
      "/motivePower/0/locomotive",
      "No locomotive E9",
    ],
    ["a rake that is not there", { rakes: ["R1", "R9"] }, "/rakes/1", "No rake R9"],
    [
      "a locomotive named twice",
      { motivePower: [{ locomotive: "E7" }, { locomotive: "E7" }] },
      "/motivePower/1/locomotive",
      "once",
    ],
    ["a rake named twice", { rakes: ["R1", "R1"] }, "/rakes/1", "once"],
    ["neither stock nor a length", { rakes: [] }, "/lengthMm", "neither stock nor a length"],
    ["a time that cannot be written on a card", { removedAt: "30:00+3" }, "/removedAt", "99:59:59"],
  ])("%s", async (_, change, pointer, says) => {
    const made = await app.request.post(trains).send({ ...train, ...change });
    const changed = await app.request
      .put(`${trains}/101`)
      .set("if-match", "*")
      .send({ ...train, code: "101", ...change });
    for (const { status, body } of [made, changed]) {
      expect([status, body.code]).toEqual([422, "unprocessable"]);
      const fault = body.errors.find((each: { pointer: string }) => each.pointer === `/body${pointer}`);
      expect(fault?.detail).toContain(says);
    }
  });

  it("a time that is none", async () => {
    const { status, body } = await app.request
      .post(trains)
      .send({ ...train, path: pathWith(0, { depart: "10:60" }) });
    expect([status, body.errors[0].pointer]).toEqual([400, "/body/path/0/depart"]);
  });
});

describe("a train is taken", () => {
  it.each([
    ["that passes without stopping", pathWith(2, { depart: "10:04" })],
    [
      "that reverses where it stands",
      [...PATH, { section: "E1", arrive: "10:20" }].map((each, i) =>
        i === 4 ? { ...each, depart: "10:15" } : each,
      ),
    ],
    [
      "that runs both ways over a link",
      [PATH[0], { section: "L1", arrive: "10:02", depart: "10:03" }, { section: "W1", arrive: "10:05" }],
    ],
    [
      "that runs past midnight",
      [
        { section: "W1", depart: "23:50" },
        { section: "L1", arrive: "0:10+1" },
      ],
    ],
  ])("%s", async (_, path) => {
    await app.request
      .post(trains)
      .send({ ...train, path })
      .expect(201);
    const { body } = await app.request.get(`${trains}/200`).expect(200);
    expect(body.path.map(({ section }: { section: string }) => section)).toEqual(
      path.map((entry) => entry?.section),
    );
    await app.request.delete(`${trains}/200`).set("if-match", "*").expect(204);
  });

  it("whose times name the next day, and they come back as hours past 24", async () => {
    const path = [
      { section: "W1", depart: "23:50" },
      { section: "L1", arrive: "1:10+1" },
    ];
    const { body } = await app.request
      .post(trains)
      .send({ ...train, path })
      .expect(201);
    expect(body.path).toEqual([
      { section: "W1", arrive: null, depart: "23:50" },
      { section: "L1", arrive: "25:10", depart: null },
    ]);
    await app.request.delete(`${trains}/200`).set("if-match", "*").expect(204);
  });
});
