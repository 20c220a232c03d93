import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { BOOKING_MOVES, BOOKING_STATES, type BookingState } from "../../../shared/booking.ts";
import { localActor } from "../../../src/http/actor.ts";
import { memberOf } from "../../support/actors.ts";
import { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

let actor = localActor;
let app: Awaited<ReturnType<typeof testApp>>;
let clubs = 0;

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
});
afterEach(() => {
  actor = localActor;
});
afterAll(() => app.close());

/** A club with a night of its own, run by the issued version of its timetable: it runs. Returns the night's address. */
async function makeNight(change: object = {}): Promise<string> {
  const club = await makeClub(app, `c${++clubs}`);
  const [march] = exampleDocument.sessions;
  const night = {
    ...march,
    code: "night",
    name: "The night",
    slots: [
      {
        code: "only",
        name: "The only slot",
        startsAt: "2027-04-10T19:00",
        endsAt: "2027-04-10T21:00",
        layoutStart: "10:00",
        timetable: "winter",
        timetableVersion: 1,
        ...change,
      },
    ],
  };
  await app.request.post(`${club}/sessions`).send(night).expect(201);
  return `${club}/sessions/night`;
}

const clubOf = (night: string) => night.split("/sessions/")[0] as string;
const codeOf = (night: string) => clubOf(night).split("/").at(-1) as string;
const read = async (night: string) => (await app.request.get(`${night}/booking`).expect(200)).body;
const move = (night: string, body: object, version = "*") =>
  app.request.post(`${night}/booking/moves`).set("if-match", version).send(body);

describe("a night that nobody has touched", () => {
  it("is a draft at version 1, and says how it is manned and what stops it", async () => {
    const night = await makeNight();
    const response = await app.request.get(`${night}/booking`).expect(200);
    expect(response.headers.etag).toBe('"1"');
    expect(response.body).toMatchObject({
      session: "night",
      state: "draft",
      mayMoveTo: ["open", "cancelled"],
      startsAt: "2027-04-10T18:00:00.000Z",
      endsAt: "2027-04-10T20:00:00.000Z",
      manning: { trains: 1, manned: 0, duties: 0, mannedDuties: 0 },
      blocks: [{ slot: "only", stops: [], unfit: [] }],
    });
  });

  it("shows what stops it to those alone who may book", async () => {
    const night = await makeNight();
    actor = memberOf(codeOf(night), "member");
    expect(await read(night)).toMatchObject({ blocks: null, mayMoveTo: [] });
  });

  it("is listed with the others by time, from and to an instant", async () => {
    const night = await makeNight();
    const list = async (query: string) =>
      (await app.request.get(`${clubOf(night)}/bookings${query}`).expect(200)).body.items.map(
        (item: { session: string; state: string }) => `${item.session} ${item.state}`,
      );
    expect(await list("")).toEqual(["march draft", "night draft"]);
    expect(await list("?from=2027-04-01T00:00:00Z")).toEqual(["night draft"]);
    expect(await list("?to=2027-04-01T00:00:00Z")).toEqual(["march draft"]);
  });
});

describe("opening", () => {
  it("is done where nothing stops the night, and takes the version that was read", async () => {
    const night = await makeNight();
    await move(night, { to: "open" }, '"7"').expect(412);
    await app.request.post(`${night}/booking/moves`).send({ to: "open" }).expect(428);
    const { body, headers } = await move(night, { to: "open" }, '"1"').expect(200);
    expect([body.state, body.reason, body.blocks, headers.etag]).toEqual(["open", null, null, '"2"']);
  });

  it("is refused with every finding while something stops a slot, unless a reason is given, which is kept", async () => {
    const night = await makeNight();
    const club = clubOf(night);
    await app.request.delete(`${club}/links/L1-M1`).set("if-match", "*").expect(204);
    const before = await read(night);
    expect(before.blocks[0].stops[0]).toMatchObject({ code: "path-not-linked", severity: "stops" });
    const refused = await move(night, { to: "open" }).expect(409);
    expect(refused.body.code).toBe("night-stopped");
    expect(refused.body.errors[0]).toEqual({
      pointer: "/slots/only",
      detail: before.blocks[0].stops[0].sentence,
    });
    expect((await read(night)).state).toBe("draft");
    const opened = await move(night, { to: "open", reason: "The link is laid on the day." }).expect(200);
    expect(opened.body).toMatchObject({ state: "open", reason: "The link is laid on the day." });
    expect(await read(night)).toMatchObject({ state: "open", reason: "The link is laid on the day." });
  });

  it("keeps no reason where nothing needed one", async () => {
    const night = await makeNight();
    const { body } = await move(night, { to: "open", reason: "Just so" }).expect(200);
    expect(body.reason).toBeNull();
  });

  it("takes an issued timetable version, whatever the reason", async () => {
    const night = await makeNight({ timetableVersion: 2 });
    const { body } = await move(night, { to: "open", reason: "All the same" }).expect(409);
    expect(body.code).toBe("night-stopped");
    expect(body.detail).toMatch(/^Version 2 of timetable winter is a draft: issue it/);
  });
});

describe("moves", () => {
  it("lead from each state where the table says, and nowhere else", async () => {
    for (const from of BOOKING_STATES) {
      const night = await makeNight();
      if (from !== "draft")
        await app.request.put(`${night}/booking`).set("if-match", "*").send(bodyOf()).expect(200);
      const set = () =>
        app.prisma.booking.updateMany({
          where: { session: { code: "night", club: { code: codeOf(night) } } },
          data: { state: from },
        });
      await set();
      const refused = BOOKING_STATES.filter(
        (to) => !(BOOKING_MOVES[from] as readonly BookingState[]).includes(to),
      );
      for (const to of refused) {
        const { body } = await move(night, { to }).expect(409);
        expect([from, to, body.code]).toEqual([from, to, "not-from-here"]);
      }
      for (const to of BOOKING_MOVES[from]) {
        await set();
        const { body } = await move(night, { to }).expect(200);
        expect([from, to, body.state]).toEqual([from, to, to]);
      }
    }
  });

  it("on the night are the marshal's too; the others are the secretary's", async () => {
    const night = await makeNight();
    await move(night, { to: "open" }).expect(200);
    actor = memberOf(codeOf(night), "session marshal");
    const early = await move(night, { to: "locked" }).expect(403);
    expect(early.body.code).toBe("not-permitted");
    actor = localActor;
    await move(night, { to: "locked" }).expect(200);
    actor = memberOf(codeOf(night), "session marshal");
    expect((await read(night)).mayMoveTo).toEqual(["running"]);
    await move(night, { to: "running" }).expect(200);
    await move(night, { to: "cancelled" }).expect(403);
    await move(night, { to: "finished" }).expect(200);
    actor = memberOf(codeOf(night), "member");
    await move(night, { to: "running" }).expect(403);
  });

  it("of eight at the same time of the same version one is made", async () => {
    const night = await makeNight();
    const answers = await Promise.all(Array.from({ length: 8 }, () => move(night, { to: "open" }, '"1"')));
    const statuses = answers.map(({ status }) => status).sort();
    expect(statuses).toEqual([200, ...Array(7).fill(412)]);
  });
});

const bodyOf = (change: object = {}) => ({ venueNote: "", noteToAll: "", ...change });

describe("what the secretary says of a night", () => {
  it("is kept, version by version", async () => {
    const night = await makeNight();
    const body = bodyOf({
      venueNote: "Side door",
      noteToAll: "Bring a mug",
      secondClaimFrom: "2027-04-01T18:00:00+01:00",
      attending: ["ada"],
    });
    const put = (version: string) => app.request.put(`${night}/booking`).set("if-match", version).send(body);
    const first = await put('"1"').expect(200);
    expect(first.body).toMatchObject({
      venueNote: "Side door",
      noteToAll: "Bring a mug",
      secondClaimFrom: "2027-04-01T17:00:00.000Z",
      attending: ["ada"],
      version: 2,
    });
    await put('"1"').expect(412);
    expect((await put('"2"').expect(200)).headers.etag).toBe('"3"');
  });

  it("names members that there are", async () => {
    const night = await makeNight();
    const { body } = await app.request
      .put(`${night}/booking`)
      .set("if-match", "*")
      .send(bodyOf({ attending: ["ada", "nobody"] }))
      .expect(422);
    expect(body.errors[0].pointer).toBe("/body/attending/1");
  });

  it("is not for members to say", async () => {
    const night = await makeNight();
    actor = memberOf(codeOf(night), "member");
    await app.request.put(`${night}/booking`).set("if-match", "*").send(bodyOf()).expect(403);
  });
});

it("members say of themselves whether they come, and the secretary of anyone", async () => {
  const night = await makeNight();
  const say = (body: object) => app.request.post(`${night}/booking/coming`).send(body);
  await say({ coming: true }).expect(422);
  await say({ member: "bo", coming: true }).expect(200);
  actor = {
    ...memberOf(codeOf(night), "member"),
    membership: (code) => ({ ...memberOf(codeOf(night), "member").membership(code), member: "ada" }) as never,
  };
  await say({ member: "bo", coming: false }).expect(403);
  const { body } = await say({ coming: true }).expect(200);
  expect(body.attending).toEqual(["ada", "bo"]);
  expect((await say({ coming: false }).expect(200)).body.attending).toEqual(["bo"]);
});

describe("a booked night keeps what members rely on", () => {
  const change = async (night: string, changed: object) => {
    const { body } = await app.request.get(night).expect(200);
    const { version: _, updatedAt: __, ...session } = body;
    return app.request
      .put(night)
      .set("if-match", "*")
      .send({ ...session, ...changed });
  };

  it("its hours, clock and timetable stay, its name may change", async () => {
    const night = await makeNight();
    await move(night, { to: "open" }).expect(200);
    const { body } = await app.request.get(night).expect(200);
    const [slot] = body.slots;
    expect((await change(night, { name: "Renamed", note: "New" })).status).toBe(200);
    for (const changed of [
      { clockRatio: 5 },
      { slots: [{ ...slot, startsAt: "2027-04-10T18:00" }] },
      { slots: [{ ...slot, endsAt: "2027-04-10T22:00" }] },
      { slots: [{ ...slot, layoutStart: "9:00" }] },
      { slots: [{ ...slot, timetableVersion: 2 }] },
      { slots: [{ ...slot, code: "other" }] },
    ]) {
      const refused = await change(night, changed);
      expect([changed, refused.status, refused.body.code]).toEqual([changed, 409, "booking-holds"]);
      expect(refused.body.detail).toMatch(/members rely on its times\./);
    }
    const removed = await app.request.delete(night).set("if-match", "*").expect(409);
    expect(removed.body.code).toBe("booking-holds");
  });

  it("a renamed timetable comes along, and a draft may change", async () => {
    const night = await makeNight();
    await move(night, { to: "open" }).expect(200);
    await app.request
      .put(`${clubOf(night)}/timetables/winter`)
      .set("if-match", "*")
      .send({ code: "cold", name: "Cold" })
      .expect(200);
    expect((await app.request.get(night)).body.slots[0].timetable).toBe("cold");
    await move(night, { to: "draft" }).expect(200);
    expect((await change(night, { clockRatio: 5 })).status).toBe(200);
  });
});

describe("standing duties", () => {
  it("lie in their slot, may have hours of their own within it, and come with the manning", async () => {
    const night = await makeNight();
    const url = `${night}/slots/only/duties`;
    const box = { code: "box", name: "Box", kind: "signalling", place: "mid", requires: ["panel"] };
    await app.request.post(url).send(box).expect(201);
    await app.request
      .post(url)
      .send({ code: "late", name: "Late", startsAt: "2027-04-10T20:00", endsAt: "2027-04-10T21:00" })
      .expect(201);
    for (const hours of [
      { startsAt: "2027-04-10T18:59" },
      { endsAt: "2027-04-10T21:01" },
      { startsAt: "2027-04-10T20:00", endsAt: "2027-04-10T20:00" },
    ])
      await app.request
        .post(url)
        .send({ code: "stray", name: "Stray", ...hours })
        .expect(422);
    await app.request.post(`${night}/slots/none/duties`).send(box).expect(404);
    expect((await read(night)).manning).toMatchObject({ duties: 2, mannedDuties: 0 });
    const { body } = await app.request.get(`${url}/late`).expect(200);
    expect(body.startsAt).toBe("2027-04-10T20:00:00+01:00");
  });
});
