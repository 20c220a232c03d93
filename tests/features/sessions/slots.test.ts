import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { exampleClub, exampleDocument, makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let london: string;

beforeAll(async () => {
  app = await testApp();
  london = await makeClub(app, "london");
});
afterAll(() => app.close());

const [march] = exampleDocument.sessions;
const [pattern] = march?.slots ?? [];

/** A session of one slot, or of several one after the other. */
const session = (code: string, ...slots: readonly (readonly [string, string])[]) => ({
  code,
  name: "Trial",
  clockRatio: 4,
  areas: [],
  slots: slots.map(([startsAt, endsAt], i) => ({ ...pattern, code: `s${i}`, startsAt, endsAt })),
});

const post = (url: string, body: object) => app.request.post(`${url}/sessions`).send(body);

async function clubIn(timeZone: string): Promise<string> {
  const code = timeZone.replace("/", "-");
  await app.request
    .post("/api/clubs")
    .send({ ...exampleClub, code, timeZone })
    .expect(201);
  const { layout, roster, timetables } = exampleDocument;
  await app.request.post(`/api/clubs/${code}/import`).send({ layout, roster, timetables }).expect(200);
  return `/api/clubs/${code}`;
}

const pointersOf = (body: { errors: readonly { pointer: string }[] }) =>
  body.errors.map(({ pointer }) => pointer);

describe("wall times on nights when the clocks change in 2027", () => {
  // IANA time zone database, rule EU: 01:00 UTC on the last Sundays of March and October, 2027-03-28 and 2027-10-31
  it("in London 01:30 is skipped in March: refused, with what to write", async () => {
    const { status, body } = await post(london, session("gap", ["2027-03-28T01:30", "2027-03-28T03:00"]));
    expect([status, body.code, pointersOf(body)]).toEqual([422, "unprocessable", ["/body/slots/0/startsAt"]]);
    expect(body.errors[0].detail).toContain("from 01:00 to 02:00");
    expect(body.errors[0].detail).toContain("write 02:00 or later");
  });

  it("in London 01:30 comes twice in October: refused without its offset, taken with either", async () => {
    const twice = await post(london, session("oct", ["2027-10-30T22:00", "2027-10-31T01:30"]));
    expect([twice.status, pointersOf(twice.body)]).toEqual([422, ["/body/slots/0/endsAt"]]);
    expect(twice.body.errors[0].detail).toContain("2027-10-31T01:30:00+01:00 or 2027-10-31T01:30:00+00:00");
    const { body } = await post(
      london,
      session("oct", ["2027-10-31T01:30+01:00", "2027-10-31T01:30+00:00"]),
    ).expect(201);
    expect(body.slots).toMatchObject([
      { startsAt: "2027-10-31T01:30:00+01:00", endsAt: "2027-10-31T01:30:00+00:00" },
    ]);
    const stored = await app.prisma.slot.findFirstOrThrow({ where: { session: { code: "oct" } } });
    expect(stored.startsAt.toISOString()).toBe("2027-10-31T00:30:00.000Z");
    expect(stored.endsAt.toISOString()).toBe("2027-10-31T01:30:00.000Z");
  });

  it("an offset that the clocks do not have then is refused", async () => {
    const { status, body } = await post(
      london,
      session("off", ["2027-06-05T19:00Z", "2027-06-05T20:00+01:00"]),
    );
    expect([status, pointersOf(body)]).toEqual([422, ["/body/slots/0/startsAt"]]);
    expect(body.errors[0].detail).toContain("write 2027-06-05T19:00:00+01:00");
  });

  // rule EU in local time: America/Nuuk goes forward in the evening of the Saturday
  it("in Nuuk Saturday 20:00 to Sunday 00:30 is 3 h 30 of real time", async () => {
    const nuuk = await clubIn("America/Nuuk");
    await post(nuuk, session("gap", ["2027-03-27T20:00", "2027-03-28T00:30"])).expect(201);
    const { startsAt, endsAt } = await app.prisma.slot.findFirstOrThrow({
      where: { session: { club: { timeZone: "America/Nuuk" } } },
    });
    expect(endsAt.getTime() - startsAt.getTime()).toBe(3.5 * 3_600_000);
  });

  // rule LH: half an hour back at 02:00 on the first Sunday of April, 2027-04-04
  it("on Lord Howe 20:00 to 02:00 is 6 h 30 of real time", async () => {
    const island = await clubIn("Australia/Lord_Howe");
    await post(island, session("back", ["2027-04-03T20:00", "2027-04-04T02:00"])).expect(201);
    const { startsAt, endsAt } = await app.prisma.slot.findFirstOrThrow({
      where: { session: { club: { timeZone: "Australia/Lord_Howe" } } },
    });
    expect(endsAt.getTime() - startsAt.getTime()).toBe(6.5 * 3_600_000);
  });
});

describe("a session is refused, and the place named:", () => {
  const hour = ["2027-06-12T19:00", "2027-06-12T20:00"] as const;
  it.each([
    [
      "a day that the calendar does not have",
      session("x", ["2027-02-30T19:00", "2027-03-02T20:00"]),
      "/slots/0/startsAt",
      "The calendar has no 2027-02-30",
    ],
    [
      "an end before the start",
      session("x", ["2027-06-12T20:00", "2027-06-12T19:00"]),
      "/slots/0/endsAt",
      "later end",
    ],
    [
      "an end at the start",
      session("x", ["2027-06-12T20:00", "2027-06-12T20:00"]),
      "/slots/0/endsAt",
      "later end",
    ],
    [
      "more layout time than the clock shows",
      session("x", ["2027-06-12T00:00", "2027-06-13T00:00"]),
      "/slots/0/endsAt",
      "96:00",
    ],
    [
      "an area named twice",
      {
        ...session("x", hour),
        areas: [
          { area: "main", control: "digital" },
          { area: "main", control: "analog" },
        ],
      },
      "/areas/1/area",
      "once",
    ],
    [
      "an area that is not there",
      { ...session("x", hour), areas: [{ area: "moon", control: "digital" }] },
      "/areas/0/area",
      "No area moon",
    ],
    [
      "a slot code twice",
      {
        ...session("x", hour),
        slots: [
          { ...pattern, startsAt: hour[0], endsAt: hour[1] },
          { ...pattern, startsAt: "2027-06-12T21:00", endsAt: "2027-06-12T22:00" },
        ],
      },
      "/slots/1/code",
      "second time",
    ],
    [
      "a version that is not there",
      {
        ...session("x", hour),
        slots: [{ ...pattern, startsAt: hour[0], endsAt: hour[1], timetableVersion: 9 }],
      },
      "/slots/0/timetableVersion",
      "No timetable version winter 9: make it first, or name one of winter 1, winter 2",
    ],
  ])("%s", async (_, body, pointer, says) => {
    const response = await post(london, body);
    expect([response.status, response.body.code]).toEqual([422, "unprocessable"]);
    const fault = response.body.errors.find(
      (each: { pointer: string }) => each.pointer === `/body${pointer}`,
    );
    expect(fault?.detail).toContain(says);
  });

  it("a clock ratio of 0", async () => {
    const { status, body } = await post(london, { ...session("x", hour), clockRatio: 0 });
    expect([status, pointersOf(body)]).toEqual([400, ["/body/clockRatio"]]);
    expect(body.errors[0].detail).toContain("more than 0");
  });
});

describe("the club has one railway: slots", () => {
  const saturday = (from: string, to: string) => [`2027-07-03T${from}`, `2027-07-03T${to}`] as const;

  it("that touch are taken, half-open as they are", async () => {
    await post(london, session("jul", saturday("19:00", "20:00"), saturday("20:00", "21:00"))).expect(201);
    await post(london, session("jul-late", saturday("21:00", "22:00"))).expect(201);
  });

  it.each([
    [
      "in one session",
      session("x", saturday("10:00", "12:00"), saturday("11:59", "13:00")),
      "/body/slots/0/startsAt",
    ],
    ["with another session", session("x", saturday("18:00", "19:01")), "/body/slots/0/startsAt"],
    [
      "around another session",
      session("x", saturday("08:00", "09:00"), saturday("18:00", "23:00")),
      "/body/slots/1/startsAt",
    ],
  ])("that overlap %s are refused", async (_, body, pointer) => {
    const response = await post(london, body);
    expect([response.status, response.body.code]).toEqual([409, "conflict"]);
    expect(pointersOf(response.body)).toContain(pointer);
    expect(response.body.errors[0].detail).toContain("one railway");
  });

  it("may trade places within a session, and a session may keep its own hours", async () => {
    const { body } = await app.request.get(`${london}/sessions/jul`).expect(200);
    const { version: _, updatedAt: __, ...record } = body;
    const [first, second] = record.slots;
    const traded = [
      { ...first, startsAt: second.startsAt, endsAt: second.endsAt },
      { ...second, startsAt: first.startsAt, endsAt: first.endsAt },
    ];
    const answer = await app.request
      .put(`${london}/sessions/jul`)
      .set("if-match", "*")
      .send({ ...record, slots: traded });
    expect(answer.status).toBe(200);
    expect(answer.body.slots).toEqual(traded);
  });

  it("of different clubs have nothing to do with each other", async () => {
    const paris = await clubIn("Europe/Paris");
    await post(paris, session("jul", saturday("19:00", "23:00"))).expect(201);
  });
});

it("a stored slot can be checked at once", async () => {
  const { body } = await app.request.post(`${london}/sessions/march/slots/first/check`).expect(200);
  expect(body.slot.startsAt).toMatch(/^2027-03-20T19:00:00/);
  expect(body.trains.map(({ code }: { code: string }) => code)).toEqual(["101"]);
  await app.request.post(`${london}/sessions/march/slots/third/check`).expect(404);
});
