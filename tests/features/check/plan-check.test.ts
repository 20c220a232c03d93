import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type CheckReport, checkReport } from "../../../shared/check.ts";
import { examplePlan } from "../../../src/features/check/example-plan.ts";
import { testApp } from "../../support/test-app.ts";

type Plan = typeof examplePlan;

let served: Awaited<ReturnType<typeof testApp>>;
beforeAll(async () => {
  served = await testApp();
});
afterAll(() => served.close());

const post = (body: object) => served.request.post("/api/check").send(body);

async function checkExample(change: (plan: Plan) => void = () => {}): Promise<CheckReport> {
  const plan = structuredClone(examplePlan);
  change(plan);
  const response = await post(plan);
  expect(response.status, JSON.stringify(response.body)).toBe(200);
  return checkReport.parse(response.body);
}

const trainOf = (plan: Plan) => plan.trains[0] as Plan["trains"][0];

describe("a plan posted whole", () => {
  it("runs, with every figure of the design's worked example on both clocks", async () => {
    const report = await checkExample();
    expect(report).toMatchObject({ verdict: "runs", headline: "This night runs.", stops: 0, warnings: 0 });
    // Design section 4, worked example: W1 clears 15.0, L1 0.0–52.5, B1 37.5–102.0, L2 90.0–138.0, E1 from 126.0
    expect(report.occupations.map((o) => [o.section, o.enterMs, o.clearMs])).toEqual([
      ["W1", null, 15_000],
      ["L1", 0, 52_500],
      ["B1", 37_500, 102_000],
      ["L2", 90_000, 138_000],
      ["E1", 126_000, null],
    ]);
    expect(report.occupations.map((o) => [o.blockedFromMs, o.blockedToMs]).slice(1, 4)).toEqual([
      [-5_000, 57_500],
      [32_500, 107_000],
      [85_000, 143_000],
    ]);
    expect(report.slot).toMatchObject({ layoutStart: "10:00", layoutEnd: "11:00", startsAt: null });
    expect(report.districts[0]).toMatchObject({ code: "D1", peakMa: 350, peakAtMs: 0, peakLayout: "10:00" });
    expect(report.handsets).toMatchObject([{ code: "digital", stock: 1, peak: 1, trains: ["101"] }]);
  });

  it("in which no train departs says so instead of good news", async () => {
    const report = await checkExample((plan) => {
      plan.slot.layoutStart = "10:30";
    });
    expect(report).toMatchObject({ verdict: "runs", trains: [], trainsNotInSlot: ["101"] });
    expect(report.headline).toBe("No train departs in this slot, so there is nothing to stop it.");
  });

  it("draws the train graph by the line's distances", async () => {
    const { graph } = await checkExample();
    expect(graph).toHaveLength(1);
    expect(graph[0]?.trains).toEqual([
      {
        train: "101",
        points: [
          [0, 0],
          [60_000, 4_800],
          [90_000, 4_800],
          [150_000, 10_800],
        ],
      },
    ]);
  });

  it("says in sentences what stops it", async () => {
    const report = await checkExample((plan) => {
      const second = structuredClone(trainOf(plan));
      plan.trains.push({ ...second, code: "103", motivePower: [], rakes: [], lengthMm: 900 });
      (plan.layout.districts?.[0] as { breakerMa: number }).breakerMa = 300;
    });
    expect(report.verdict).toBe("stopped");
    const codes = report.findings.map((f) => f.code);
    expect(codes).toContain("section-clash");
    expect(codes).toContain("district-will-trip");
    expect(codes).toContain("handsets-too-few");
    const trip = report.findings.find((f) => f.code === "district-will-trip");
    expect(trip).toMatchObject({
      measured: 350,
      limit: 300,
      unit: "mA",
      shares: [{ train: "101", ma: 350 }],
    });
    expect(trip?.overSeconds).toBe(120);
    expect(trip?.sentence).toBe(
      "District D1 will trip at 10:00: train 101 (350 mA) draws 350 mA, and its breaker opens at 300 mA (for 2 min in all).",
    );
    // the little breaker would not hold when power returns either
    expect(codes).toContain("district-trips-on-restart");
    expect(report.headline).toMatch(/^\d things stop this night\. 1 warning\.$/);
  });

  it("tells times however far the layout clock runs on: a release of a day at ratio 60 is 60 days of it", async () => {
    const report = await checkExample((plan) => {
      Object.assign(plan.policy as object, { releaseSeconds: 86_400 });
      Object.assign(plan.slot, { clockRatio: 60 });
      plan.trains.push({
        ...structuredClone(trainOf(plan)),
        code: "103",
        motivePower: [],
        rakes: [],
        lengthMm: 900,
      });
    });
    expect(report.findings.find((f) => f.code === "section-clash")?.span.layoutEnd).toMatch(/^\d{4}:/);
  });

  it("is a finding, not a refusal, where the path is not linked or the times run backwards", async () => {
    const report = await checkExample((plan) => {
      trainOf(plan).path.splice(3, 1);
      const late = structuredClone(trainOf(plan));
      plan.trains.push({
        ...late,
        code: "105",
        path: late.path.map((e, i) => (i === 0 ? { ...e, depart: "10:30" } : e)),
      });
    });
    const found = report.findings.map((f) => [f.code, ...f.trains]);
    expect(found).toContainEqual(["path-not-linked", "101"]);
    expect(found).toContainEqual(["path-times-backwards", "105"]);
  });
});

describe("a plan that cannot be computed is refused", () => {
  const refused = async (change: (plan: Plan) => void) => {
    const plan = structuredClone(examplePlan);
    change(plan);
    const response = await post(plan);
    expect(response.headers["content-type"]).toContain("application/problem+json");
    return {
      status: response.status,
      code: response.body.code,
      pointers: response.body.errors?.map((e: { pointer: string }) => e.pointer),
    };
  };

  it.each<[string, string, number, (plan: Plan) => void]>([
    ["an unknown field", "/body/colour", 400, (p) => Object.assign(p, { colour: "red" })],
    [
      "a negative current",
      "/body/roster/locomotives/0/running/ma",
      400,
      (p) => Object.assign(p.roster.locomotives?.[0]?.running as object, { ma: -1 }),
    ],
    ["a clock ratio of 0", "/body/slot/clockRatio", 400, (p) => Object.assign(p.slot, { clockRatio: 0 })],
    [
      "a time that is none",
      "/body/trains/0/path/0/depart",
      400,
      (p) => Object.assign(trainOf(p).path[0] as object, { depart: "10:75" }),
    ],
    [
      "a section of no length",
      "/body/layout/sections/0/lengthMm",
      400,
      (p) => Object.assign(p.layout.sections?.[0] as object, { lengthMm: 0 }),
    ],
    [
      "an unknown section",
      "/body/trains/0/path/1/section",
      422,
      (p) => Object.assign(trainOf(p).path[1] as object, { section: "L9" }),
    ],
    [
      "a slot that ends before it starts",
      "/body/slot/layoutEnd",
      422,
      (p) => Object.assign(p.slot, { layoutEnd: "9:00" }),
    ],
    [
      "a driver who is no member",
      "/body/crew/0/member",
      422,
      (p) => Object.assign(p, { crew: [{ train: "101", member: "nobody" }] }),
    ],
  ])("%s, at %s", async (_, pointer, status, change) => {
    const refusal = await refused(change);
    expect(refusal.status).toBe(status);
    expect(refusal.pointers).toContain(pointer);
  });

  it("10,000 trains, with the limit, at once", async () => {
    const refusal = await refused((plan) => {
      const train = { ...trainOf(plan), rakes: [] };
      plan.trains = Array.from({ length: 10_000 }, (_, i) => ({ ...train, code: String(i) }));
    });
    expect(refusal).toEqual({ status: 413, code: "too-many-trains", pointers: ["/body/trains"] });
  });

  it("paths of more sections together than one check takes", async () => {
    const refusal = await refused((plan) => {
      const { path, ...train } = trainOf(plan);
      // there and back, over and over
      const shuttle = Array.from({ length: 198 }, (_, i) => ({ section: i % 2 === 0 ? "L1" : "W1" }));
      const long = [path[0] as object, ...shuttle, { section: "L1", arrive: "10:50" }] as typeof path;
      plan.trains = Array.from({ length: 251 }, (_, i) => ({ ...train, code: String(i), path: long }));
    });
    expect(refusal).toEqual({ status: 413, code: "too-many-trains", pointers: ["/body/trains"] });
  });
});

describe("a plan in which everything meets everything", () => {
  it("is answered, lists what a person can read, and says that there is more", async () => {
    const report = await checkExample((plan) => {
      const train = { ...trainOf(plan), motivePower: [], rakes: [], lengthMm: 900 };
      plan.trains = Array.from({ length: 400 }, (_, i) => ({ ...train, code: String(i) }));
    });
    // 400 trains at once are 79,800 pairs on each of five sections
    expect(report).toMatchObject({ verdict: "stopped", complete: false, stops: 1_000 });
    expect(report.headline).toMatch(/At least \d+ further findings not listed\.$/);
  });
});
