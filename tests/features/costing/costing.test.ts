import { afterAll, beforeAll, expect, it } from "vitest";
import { demoClub, loadDemo } from "../../../seed/index.ts";
import { CLEAN } from "../../../seed/sessions.ts";
import type { BothWays } from "../../../shared/costing.ts";
import { testApp } from "../../support/test-app.ts";

const club = `/api/clubs/${demoClub.code}`;
let served: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  served = await testApp();
  await loadDemo(async (record, document) => {
    await served.request.post("/api/clubs").send(record).expect(201);
    await served.request.post(`${club}/import`).send(document).expect(200);
  });
});
afterAll(() => served.close());

it("costs the demo's night both ways, side by side with what was assumed", async () => {
  const { body } = await served.request
    .post(`${club}/sessions/${CLEAN.session}/slots/first/both-ways`)
    .expect(200);
  const { headline, analog, digital, mostTrains, assumptions } = body as BothWays;
  expect(headline).toMatch(
    /^All-digital this timetable needs \d+ handsets, 2 decoders more, .* All-analog it needs \d+ controller outputs/,
  );
  // the quay's two tank engines
  expect(digital.decoders).toEqual(["A21", "A22"]);
  expect(digital.districts.flatMap(({ sections }) => sections)).toHaveLength(53);
  for (const { peakMa } of digital.districts) expect(peakMa).toBeLessThanOrEqual(digital.breakerMa * 0.8);
  for (const { peakMa } of digital.supplies) expect(peakMa).toBeLessThanOrEqual(digital.ratingMa * 0.8);
  expect(analog.outputs).toBeGreaterThanOrEqual(7);
  expect(analog.divide.map(({ section }) => section)).toEqual(expect.arrayContaining(["HY1"]));
  expect(mostTrains.most).toBeGreaterThanOrEqual(mostTrains.now);
  expect(mostTrains.sentence).toContain(`would give first`);
  expect(assumptions.join(" ")).toContain("20 % of both stays free");
  await served.request.post(`${club}/sessions/${CLEAN.session}/slots/nowhere/both-ways`).expect(404);
});

it("costs a whole timetable that no night need have booked", async () => {
  const whole = `${club}/timetables/${CLEAN.timetable}/versions/${CLEAN.version}/both-ways`;
  const { body } = await served.request.post(whole).send({ clockRatio: 4 }).expect(200);
  const { analog, digital, assumptions } = body as BothWays;
  const slot = await served.request
    .post(`${club}/sessions/${CLEAN.session}/slots/first/both-ways`)
    .expect(200);
  // the slot runs part of the same timetable, on the same track
  const part = slot.body as BothWays;
  expect(analog.outputs).toBeGreaterThanOrEqual(part.analog.outputs);
  expect(digital.peakMa).toBeGreaterThanOrEqual(part.digital.peakMa);
  expect(digital.decoders).toEqual(expect.arrayContaining(part.digital.decoders));
  expect(assumptions[0]).toMatch(/^All of the timetable runs, from \d\d:\d\d to \d\d:\d\d by a layout clock/);
  expect(assumptions[1]).toMatch(/taken to run .*digital.*analog|taken to run .*analog.*digital/);
  // in less time of the room each selector is turned as often: more turns an hour
  const faster = (await served.request.post(whole).send({ clockRatio: 8 }).expect(200)).body as BothWays;
  if (analog.turns !== null && faster.analog.turns !== null)
    expect(faster.analog.turns.anHour).toBeGreaterThan(analog.turns.anHour);

  const missing = await served.request
    .post(`${club}/timetables/${CLEAN.timetable}/versions/99/both-ways`)
    .send({ clockRatio: 4 })
    .expect(404);
  expect(missing.body.detail).toContain("version 99");
  const { body: refused } = await served.request.post(whole).send({}).expect(400);
  expect(refused.errors[0].pointer).toBe("/body/clockRatio");
});

it("costs a timetable of no trains: nothing is needed", async () => {
  await served.request.post(`${club}/timetables`).send({ code: "bare", name: "Bare" }).expect(201);
  await served.request.post(`${club}/timetables/bare/versions`).send({}).expect(201);
  const { body } = await served.request
    .post(`${club}/timetables/bare/versions/1/both-ways`)
    .send({ clockRatio: 4 })
    .expect(200);
  expect(body).toMatchObject({ analog: { outputs: 0 }, digital: { handsets: 0 } });
});
