import { afterAll, beforeAll, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { type exampleDocument, makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;
beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
});
afterAll(() => app.close());

// the example's night march has the slots first and second, and a reading of D-West in first: night-1
type Slot = (typeof exampleDocument.sessions)[number]["slots"][number];
const read = async (path: string) => (await app.request.get(`${club}/${path}`).expect(200)).body;
const record = async (path: string) => {
  const { version: _, updatedAt: __, ...body } = await read(path);
  return body;
};
const put = (path: string, body: object) =>
  app.request.put(`${club}/${path}`).set("if-match", "*").send(body);
const compared = async (slot: string) =>
  (await app.request.post(`${club}/sessions/march/slots/${slot}/compare-readings`).expect(200)).body.readings;

const called = (slots: readonly Slot[], from: string, to: string) =>
  slots.map((slot) => ({ ...slot, code: slot.code === from ? to : slot.code }));

it("a reading names a slot that its night has", async () => {
  const reading = { ...(await record("readings/night-1")), code: "night-2" };
  const { body } = await app.request
    .post(`${club}/readings`)
    .send({ ...reading, slot: "frist" })
    .expect(422);
  expect(body.errors).toEqual([
    {
      pointer: "/body/slot",
      detail: "No slot march frist: make it first, or name one of march first, march second.",
    },
  ]);
  const imported = await app.request
    .post(`${club}/import`)
    .send({ readings: [{ ...reading, slot: "frist" }] });
  expect([imported.status, imported.body.errors[0].pointer]).toEqual([422, "/body/readings/0/slot"]);
});

it("a district's reading without a slot is for imports of old ones alone, and compared with nothing", async () => {
  const reading = { ...(await record("readings/night-1")), code: "old", slot: null };
  const { body } = await app.request.post(`${club}/readings`).send(reading).expect(422);
  expect(body.errors).toMatchObject([
    { pointer: "/body/slot", detail: expect.stringContaining("Name the slot") },
  ]);
  await app.request
    .post(`${club}/import`)
    .send({ readings: [reading] })
    .expect(200);
  expect(await compared("first")).toHaveLength(1);
  await app.request.delete(`${club}/readings/old`).set("if-match", "*").expect(204);
});

it("a reading follows its slot to another name, and its night", async () => {
  const before = await read("readings/night-1");
  const session = await record("sessions/march");
  await put("sessions/march", { ...session, slots: called(session.slots, "first", "early") }).expect(200);
  const after = await read("readings/night-1");
  expect(after).toMatchObject({ session: "march", slot: "early" });
  expect(after.version).toBeGreaterThan(before.version);
  expect(await compared("early")).toMatchObject([{ reading: "night-1" }]);
  await put("sessions/march", { ...(await record("sessions/march")), code: "spring" }).expect(200);
  expect(await read("readings/night-1")).toMatchObject({ session: "spring", slot: "early" });
  await put("sessions/spring", { ...session, code: "march" }).expect(200);
  expect(await read("readings/night-1")).toMatchObject({ session: "march", slot: "first" });
});

it("two slots that trade their codes keep what was read under each", async () => {
  const session = await record("sessions/march");
  const [first, second] = session.slots;
  const traded = [
    { ...first, code: "second" },
    { ...second, code: "first" },
  ];
  await put("sessions/march", { ...session, slots: traded }).expect(200);
  expect(await read("readings/night-1")).toMatchObject({ slot: "first" });
  await put("sessions/march", session).expect(200);
});

it("a slot stays while something was read in it, whoever takes it out", async () => {
  const session = await record("sessions/march");
  const without = { ...session, slots: session.slots.slice(1) };
  const taken = await put("sessions/march", without).expect(409);
  expect(taken.body).toMatchObject({
    code: "in-use",
    detail: expect.stringContaining("Slot march first is used by reading night-1."),
  });
  const imported = await app.request
    .post(`${club}/import`)
    .send({ sessions: [without] })
    .expect(422);
  expect(imported.body.errors[0].detail).toBe(
    "The slot march first would go, but is used by reading night-1: keep it, or import those as well.",
  );
  await app.request.delete(`${club}/readings/night-1`).set("if-match", "*").expect(204);
  await put("sessions/march", without).expect(200);
});

it("a duty follows its slot to another name, as a reading does", async () => {
  const duty = { code: "box", kind: "signalling", name: "Signal box" };
  await app.request.post(`${club}/sessions/march/slots/second/duties`).send(duty).expect(201);
  const session = await record("sessions/march");
  await put("sessions/march", { ...session, slots: called(session.slots, "second", "late") }).expect(200);
  expect(await read("sessions/march/slots/late/duties/box")).toMatchObject(duty);
});
