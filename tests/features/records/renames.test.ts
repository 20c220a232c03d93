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

const read = async (path: string) => (await app.request.get(`${club}/${path}`).expect(200)).body;

async function rename(path: string, code: string) {
  const { version, updatedAt: _, ...body } = await read(path);
  await app.request
    .put(`${club}/${path}`)
    .set("if-match", `"${version}"`)
    .send({ ...body, code })
    .expect(200);
}

it.each([
  ["areas/main", "main-line", "sections/W1", "area"],
  ["areas/quarry", "pit", "sessions/march", "areas.1.area"],
  ["places/mid", "halt", "lines/main", "stops.1.place"],
  ["places/east", "port", "sections/E1", "place"],
  ["places/west", "yard", "handsets/H2", "places.0"],
  ["places/halt", "stop", "controllers/panel", "place"],
  ["sections/L1", "L1a", "links/W1-L1", "to"],
  ["sections/Q1", "Q1a", "selectors/S-Q1", "section"],
  // an issued version stays as it is, but what it names may get another name
  ["sections/M1", "M1a", "timetables/winter/versions/1/trains/101", "path.2.section"],
  ["command-systems/blue", "azure", "handsets/H1", "commandSystem"],
  ["supplies/B1", "B1a", "districts/D-West", "supply"],
  ["districts/D-West", "D-W", "sections/L2", "district"],
  ["locomotives/E7", "E7a", "decoders/X7", "locomotive"],
  ["locomotives/E7a", "E7b", "timetables/winter/versions/1/trains/101", "motivePower.0.locomotive"],
  ["rakes/R1", "R1a", "timetables/winter/versions/1/trains/101", "rakes.0"],
  ["timetables/winter", "cold", "sessions/march", "slots.0.timetable"],
])("renaming %s to %s reaches %s at %s, and counts as a change of it", async (path, code, user, field) => {
  const before = await read(user);
  await rename(path, code);
  const after = await read(user);
  const value = field.split(".").reduce((at, step) => at[step], after);
  expect(value).toBe(code);
  expect(after.version).toBeGreaterThan(before.version);
  await app.request.get(`${club}/${path}`).expect(404);
  await app.request.get(`${club}/${user}`).set("if-none-match", `"${before.version}"`).expect(200);
});

it("renaming a club moves everything under it", async () => {
  const { body, headers } = await app.request.get(club).expect(200);
  const { version: _, updatedAt: __, ...record } = body;
  await app.request
    .put(club)
    .set("if-match", headers.etag ?? "")
    .send({ ...record, code: "northfold" })
    .expect(200);
  await app.request.get(`${club}/areas`).expect(404);
  await app.request.get("/api/clubs/northfold/areas/pit").expect(200);
});
