import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoClub, loadDemo } from "../../../seed/index.ts";
import { CLEAN } from "../../../seed/sessions.ts";
import type { CheckReport } from "../../../shared/check.ts";
import type { WiringReport } from "../../../shared/wiring.ts";
import { testApp } from "../../support/test-app.ts";

const club = `/api/clubs/${demoClub.code}`;
const slot = `${club}/sessions/${CLEAN.session}/slots/first`;
let served: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  served = await testApp();
  await loadDemo(async (record, document) => {
    await served.request.post("/api/clubs").send(record).expect(201);
    await served.request.post(`${club}/import`).send(document).expect(200);
  });
});
afterAll(() => served.close());

const report = async (): Promise<WiringReport> =>
  (await served.request.post(`${slot}/wiring`).expect(200)).body;
const check = async (): Promise<CheckReport> => (await served.request.post(`${slot}/check`).expect(200)).body;
const west = async () => (await report()).districts.find(({ code }) => code === "D-West");

async function changeWest(change: object) {
  const { version, updatedAt, ...district } = (
    await served.request.get(`${club}/districts/D-West`).expect(200)
  ).body;
  await served.request
    .put(`${club}/districts/D-West`)
    .set("if-match", "*")
    .send({ ...district, ...change })
    .expect(200);
  return district;
}

describe("the wiring report of a slot", () => {
  it("reckons every district at the very peak that the check finds", async () => {
    const [wiring, { districts }] = [await report(), await check()];
    expect(wiring.headline).toBe(
      "All 4 districts are wired so that their breakers see a short, and were tested.",
    );
    expect(wiring.districts.map(({ code, peakMa, peakLayout }) => [code, peakMa, peakLayout])).toEqual(
      districts.map(({ code, peakMa, peakLayout }) => [code, peakMa, peakLayout]),
    );
    // NMRA S-9.1 (2020) table 3, HO
    expect(wiring).toMatchObject({ leastV: 8.5, mostV: 22, survivedV: 27 });
    for (const { wire, supplyVolts, sourceOhm, peakMa } of wiring.districts) {
      expect(wire?.farEndV).toBeCloseTo(supplyVolts - ((wire?.loopOhm ?? 0) * peakMa) / 1_000, 2);
      expect((wire?.faultMa ?? 0) / 1_000).toBeCloseTo(supplyVolts / (sourceOhm + (wire?.loopOhm ?? 0)), 1);
    }
    expect(wiring.cautions.join(" ")).toMatch(/qualified person/);
    expect(wiring.cautions.join(" ")).toMatch(/Never join the outputs of two supplies/);
  });

  it("says which conductor would do where the one laid does not, and the check finds the same", async () => {
    const before = await changeWest({
      wiring: { conductor: "0.5 mm2 flexible", lengthMm: 40_000, temperatureC: 20 },
    });
    const bad = await west();
    expect(bad).toMatchObject({ isSound: false, wire: { faultFails: true, dropFails: true } });
    expect(bad?.sentence).toMatch(/^District West would not be sure to trip on a short/);
    const found = (await check()).findings.map(({ code, districts }) => `${code} ${districts}`);
    expect(found).toEqual(
      expect.arrayContaining(["district-fault-not-seen D-West", "district-drop-too-big D-West"]),
    );
    const conductor = bad?.wire?.thinnest;
    expect(conductor).toBeTruthy();
    await changeWest({ wiring: { conductor, lengthMm: 40_000, temperatureC: 20 } });
    expect((await west())?.isSound).toBe(true);
    await changeWest(before);
    expect((await check()).findings).toEqual([]);
  });

  it("takes the latest short test, and stops a night whose district failed it", async () => {
    const test = { code: "spring", district: "D-West", testedOn: "2027-03-01", result: "failed" };
    await served.request.post(`${club}/short-tests`).send(test).expect(201);
    expect((await west())?.sentence).toBe("District West failed its last short test.");
    expect((await check()).findings).toMatchObject([{ code: "district-test-failed", districts: ["D-West"] }]);
    const again = { ...test, code: "spring-again", testedOn: "2027-03-02", result: "passed", by: "Ada" };
    await served.request.post(`${club}/short-tests`).send(again).expect(201);
    expect((await west())?.test).toMatchObject(again);
    // mended the same day: the later one counts, whatever its code
    const mended = { ...again, testedAt: "12:05" };
    await served.request
      .post(`${club}/short-tests`)
      .send({ ...mended, code: "a" })
      .expect(201);
    const morning = { ...mended, code: "z", testedAt: "09:10:20", result: "failed" };
    await served.request.post(`${club}/short-tests`).send(morning).expect(201);
    expect((await west())?.test).toMatchObject({ code: "a", testedAt: "12:05" });
    expect((await check()).findings).toEqual([]);
  });

  it("lists the steps of the test with the figures of the district", async () => {
    const steps = (await west())?.checklist.join(" ");
    expect(steps).toContain("open at 2.64 A after 250 ms");
    expect(steps).toContain("at the end farthest from the supply");
  });

  it("is told of a district without wiring or test as what it is: not known", async () => {
    const before = await changeWest({ wiring: null });
    expect((await west())?.sentence).toMatch(/its wiring is not written down/);
    await changeWest(before);
    await served.request.post(`${club}/sessions/nowhere/slots/first/wiring`).expect(404);
  });
});
