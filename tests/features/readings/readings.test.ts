import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoClub, loadDemo } from "../../../seed/index.ts";
import { CLEAN } from "../../../seed/sessions.ts";
import type { CheckReport } from "../../../shared/check.ts";
import type { Comparison, Estimates } from "../../../shared/estimates.ts";
import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import { testApp } from "../../support/test-app.ts";

const club = `/api/clubs/${demoClub.code}`;
const slot = `${club}/sessions/${CLEAN.session}/slots/first`;
let served: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  served = await testApp();
  await loadDemo(async (record, document) => {
    await served.request.post("/api/clubs").send(record).expect(201);
    await served.request
      .post(`${club}/import`)
      .send({ ...document, readings: [] })
      .expect(200);
  });
});
afterAll(() => served.close());

const check = async (): Promise<CheckReport> => (await served.request.post(`${slot}/check`).expect(200)).body;
const compare = async (): Promise<Comparison> =>
  (await served.request.post(`${slot}/compare-readings`).expect(200)).body;
const estimates = async (): Promise<Estimates> =>
  (await served.request.get(`${club}/estimates`).expect(200)).body;
const importReadings = (readings: readonly object[]) =>
  served.request.post(`${club}/import`).send({ readings }).expect(200);

const nightReading = (at: number, ma: number, layoutStart: number) => ({
  code: `night-${at}`,
  takenOn: "2027-03-20",
  origin: "night",
  district: "D-West",
  session: CLEAN.session,
  slot: "first",
  layoutTime: toLayoutTimeText(layoutStart + at * 240),
  ma,
});

describe("what meters showed", () => {
  it("counts more than the roster: estimate, check and share measured follow it", async () => {
    const before = await check();
    const engine = (await estimates()).items.find(({ state }) => state === "running");
    const readings = [1, 2, 3].map((n) => ({
      code: `bench-${n}`,
      takenOn: "2027-01-09",
      origin: "bench",
      locomotive: engine?.locomotive,
      state: "running",
      ma: 400 + 10 * n,
    }));
    await importReadings(readings);
    const after = (await estimates()).items.find(
      ({ locomotive, state }) => locomotive === engine?.locomotive && state === "running",
    );
    expect(after).toMatchObject({
      ...{ readings: 3, medianMa: 420, spreadMa: 14.8, usedMa: 420, measured: true },
      ...{ rosterMa: engine?.rosterMa, source: engine?.source },
    });
    const loads = [...before.districts, ...before.supplies, ...before.outputs, ...before.controllers];
    for (const { lowMa, peakMa, highMa, measuredMa, assumedMa, constantMa } of loads) {
      expect(lowMa).toBeLessThanOrEqual(peakMa);
      expect(highMa).toBeGreaterThanOrEqual(peakMa);
      expect(measuredMa + assumedMa + constantMa).toBe(peakMa);
    }
    for (const { code } of readings)
      await served.request.delete(`${club}/readings/${code}`).set("if-match", "*").expect(204);
  });

  it("a night's readings of a district show which locomotive draws more than the roster says", async () => {
    const { slot: span } = await check();
    const start = parseLayoutTime(span.layoutStart);
    const moments = Array.from({ length: 24 }, (_, at) => at);
    await importReadings(moments.map((at) => nightReading(at, 0, start)));
    const planned = await compare();
    const west = (await check()).districts.find(({ code }) => code === "D-West");
    expect(Math.max(...planned.readings.map(({ plannedMa }) => plannedMa))).toBeLessThanOrEqual(
      west?.peakMa ?? 0,
    );
    expect(planned.readings.some(({ plannedMa }) => plannedMa > 0)).toBe(true);
    for (const { plannedMa, draws } of planned.readings)
      expect(draws.reduce((sum, { ma }) => sum + ma, 0)).toBe(plannedMa);

    const thirsty = planned.corrections.find(({ state }) => state === "running");
    const truth = new Map(
      planned.readings.map(({ reading, plannedMa, draws }) => [
        reading,
        plannedMa +
          (draws.some((d) => d.locomotive === thirsty?.locomotive && d.state === "running") ? 40 : 0),
      ]),
    );
    await importReadings(moments.map((at) => nightReading(at, truth.get(`night-${at}`) ?? 0, start)));
    const found = await compare();
    expect(found.corrections).toEqual([{ ...thirsty, newMa: (thirsty?.oldMa ?? 0) + 40 }]);
    expect(found.afterMa).toBe(0);
    expect(found.beforeMa).toBeGreaterThan(0);

    const [{ locomotive, state, newMa: ma, version }] = found.corrections as [
      Comparison["corrections"][number],
    ];
    const stale = { corrections: [{ locomotive, state, ma, version: version + 1 }] };
    await served.request.post(`${club}/accept-corrections`).send(stale).expect(412);
    const accepted = { corrections: [{ locomotive, state, ma, version }] };
    const twice = { corrections: [...accepted.corrections, ...accepted.corrections] };
    const { body: refusal } = await served.request.post(`${club}/accept-corrections`).send(twice).expect(400);
    expect(refusal.errors[0].detail).toMatch(/is corrected twice: keep one\./);
    await served.request.post(`${club}/accept-corrections`).send(accepted).expect(200);
    const engine = (await served.request.get(`${club}/locomotives/${locomotive}`).expect(200)).body;
    expect(engine.running).toEqual({ ma, source: "measured" });
    expect(await compare()).toMatchObject({ corrections: [], beforeMa: 0 });
    await served.request.post(`${club}/accept-corrections`).send(accepted).expect(412);
  });

  it("of a time outside its slot is left out of the comparison, and told of", async () => {
    const before = await compare();
    const outside = { ...nightReading(1, 402, 0), code: "outside", layoutTime: "23:59" };
    await importReadings([outside]);
    const after = await compare();
    expect(after.readings).toEqual(before.readings);
    expect(after.headline).toBe(
      `${before.headline} One reading is of a time outside the slot and left out: put the layout time right.`,
    );
  });

  it("is of a locomotive in a state, or of a district at a moment of a night, never of both or neither", async () => {
    const body = { code: "odd", takenOn: "2027-01-09", origin: "bench", ma: 100 };
    for (const more of [{}, { district: "D-West" }, { ...nightReading(1, 1, 0), state: "running" }])
      await served.request
        .post(`${club}/readings`)
        .send({ ...body, ...more })
        .expect(400);
  });
});
