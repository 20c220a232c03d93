import ICAL from "ical.js";
import { afterAll, beforeAll, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;

beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
});
afterAll(() => app.close());

const read = async (path: string) => {
  const { text, headers } = await app.request.get(`${club}/sessions/${path}/calendar.ics`).expect(200);
  const calendar = new ICAL.Component(ICAL.parse(text));
  const [event, ...others] = calendar.getAllSubcomponents("vevent");
  expect(others).toEqual([]);
  return { headers, event: new ICAL.Event(event as ICAL.Component), calendar };
};

it("a night is a file with one event, from the first slot's start to the last one's end", async () => {
  const { headers, event, calendar } = await read("march");
  expect(headers["content-type"]).toBe("text/calendar; charset=utf-8");
  expect(headers["content-disposition"]).toBe('attachment; filename="march.ics"');
  expect(calendar.getFirstPropertyValue("name")).toBe("Northfold Model Railway Circle: March night");
  // London keeps GMT on 20 March
  expect(event.startDate.toJSDate()).toEqual(new Date("2027-03-20T19:00:00Z"));
  expect(event.endDate.toJSDate()).toEqual(new Date("2027-03-20T21:00:00Z"));
  expect(event.description).toMatch(/^19:00 .+\n20:00 .+/);
});

it("a change of the night is a later one of the same event", async () => {
  const before = (await read("march")).event;
  const url = `${club}/sessions/march`;
  const { body, headers } = await app.request.get(url);
  const { version: _v, updatedAt: _u, ...session } = body;
  await app.request
    .put(url)
    .set("if-match", String(headers.etag))
    .send({ ...session, name: "Spring night" })
    .expect(200);
  const after = (await read("march")).event;
  expect(after.uid).toBe(before.uid);
  expect(after.sequence).toBeGreaterThan(before.sequence);
  expect(after.summary).toContain("Spring night");
});

it("of a night that is not there is not found", async () => {
  const { body } = await app.request.get(`${club}/sessions/nowhere/calendar.ics`).expect(404);
  expect(body.code).toBe("not-found");
});
