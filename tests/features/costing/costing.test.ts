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
