import ICAL from "ical.js";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type Actor, localActor } from "../../../src/http/actor.ts";
import { memberOf } from "../../support/actors.ts";
import { testApp } from "../../support/test-app.ts";
import { giveTrain, makeOpenNight, makePerson } from "./turns.ts";

let actor: Actor = localActor;
let app: Awaited<ReturnType<typeof testApp>>;
let ada: Actor;
let claim: { id: string };

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
  await makeOpenNight(app, "north", "2027-04-10");
  ada = { ...memberOf("north", "member"), personId: await makePerson(app, "north", "ada") };
  // London is an hour ahead of UTC on 10 April
  claim = await giveTrain(
    app,
    "north",
    "ada",
    new Date("2027-04-10T18:10:00Z"),
    new Date("2027-04-10T18:21:30Z"),
  );
});
afterEach(() => {
  actor = localActor;
});
afterAll(() => app.close());

async function makeAddress(): Promise<string> {
  actor = ada;
  const { body } = await app.request.post("/api/me/calendar").expect(201);
  expect(body.url).toMatch(/^http:\/\/127\.0\.0\.1\/api\/calendar\/[\w-]{43}\.ics$/);
  return new URL(body.url).pathname;
}

async function read(path: string) {
  const { text } = await app.request.get(path).expect(200);
  return new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents("vevent")
    .map((component) => new ICAL.Event(component));
}

describe("the calendar of one's turns", () => {
  it("says what one drives, from the pick-up to the hand-in, where, and with which locomotive", async () => {
    const path = await makeAddress();
    const [event, ...others] = await read(path);
    expect(others).toEqual([]);
    expect(event?.uid).toBe(`claim-${claim.id}@running-foreman`);
    expect(event?.summary).toMatch(/^Train \S+, ./);
    expect(event?.startDate.toJSDate()).toEqual(new Date("2027-04-10T18:10:00Z"));
    expect(event?.endDate.toJSDate()).toEqual(new Date("2027-04-10T18:21:30Z"));
    expect(event?.location).toContain("West yard");
    expect(event?.description).toContain("The night");
    expect(event?.description).toContain("Locomotive:");
  });

  it("needs no sign-in: its address is its key, and no other one opens it", async () => {
    const path = await makeAddress();
    const stranger = await testApp({ authenticate: async () => undefined });
    await stranger.request.post("/api/me/calendar").expect(401);
    await stranger.request.get(path).expect(404);
    await stranger.close();
    const wrong = path.replace(/[\w-]{43}/, "x".repeat(43));
    expect((await app.request.get(wrong).expect(404)).body.code).toBe("not-found");
    await app.request.get("/api/calendar/short.ics").expect(400);
  });

  it("ends at its old address with a new one, and altogether when revoked", async () => {
    const first = await makeAddress();
    const second = await makeAddress();
    await app.request.get(first).expect(404);
    expect(await read(second)).toHaveLength(1);
    await app.request.delete("/api/me/calendar").expect(204);
    await app.request.get(second).expect(404);
    await app.request.delete("/api/me/calendar").expect(204);
  });

  it("is kept so that nobody who reads the database knows its address", async () => {
    const path = await makeAddress();
    const rows = await app.prisma.calendarFeed.findMany();
    const secret = /([\w-]{43})\.ics/.exec(path)?.[1];
    expect(JSON.stringify(rows)).not.toContain(secret);
  });

  it("shows nobody's turns but one's own, and none of a night that is off", async () => {
    const bo = { ...memberOf("north", "member"), personId: await makePerson(app, "north", "bo") };
    actor = bo;
    const { body } = await app.request.post("/api/me/calendar").expect(201);
    expect(await read(new URL(body.url).pathname)).toEqual([]);
    const path = await makeAddress();
    actor = localActor;
    await app.request
      .post("/api/clubs/north/sessions/night/booking/moves")
      .set("if-match", "*")
      .send({ to: "cancelled", reason: "The hall is let" })
      .expect(200);
    expect(await read(path)).toEqual([]);
  });

  it("is nothing for one without an account", async () => {
    const { body } = await app.request.post("/api/me/calendar").expect(403);
    expect(body.code).toBe("not-permitted");
  });
});
