import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import {
  type BlockingBox,
  compressedCycle,
  minimumHeadway,
  occupancyRate,
} from "../../../src/planner/occupation/headway.ts";
import { policyWith, section, smallProblem, train } from "../small-problem.ts";

/** Blocked ms of the middle one of three sections, crossed at one steady speed without a stop. */
function blockedMs(given: {
  scale: number;
  lengthMm: number;
  trainMm: number;
  mmPerSecond: number;
  setUpMs: number;
  releaseMs: number;
}): number {
  const { scale, lengthMm, trainMm, mmPerSecond, setUpMs, releaseMs } = given;
  const run = 2 * lengthMm + 2 * trainMm;
  const problem = smallProblem({
    scale,
    policy: policyWith({ setUpMs, releaseMs }),
    sections: [section("A", lengthMm), section("B", lengthMm), section("C", lengthMm + 2 * trainMm)],
    trains: [
      train("T", trainMm, [
        { section: 0, arriveMs: null, departMs: 0 },
        { section: 1, arriveMs: null, departMs: null },
        { section: 2, arriveMs: Math.round((run / mmPerSecond) * 1_000), departMs: null },
      ]),
    ],
  });
  const found = check(problem).occupations.find((o) => o.section === 1);
  return (found?.blocked.endMs ?? 0) - (found?.blocked.startMs ?? 0);
}

// Parts of a blocking time in order: route formation, reaction, approach, running, clearing, release. Pachl, Railway Operation
// and Control; Hansen & Pachl, Railway Timetabling & Operations (from memory; the order of the parts seen). The sums are calculated.
describe("a blocking time is the sum of its parts", () => {
  it("prototype at 100 km/h: 6 + 12 + 1000 m + 1500 m + 250 m at 27.78 m/s + 6 = 123.0 s", () => {
    const mmPerSecond = 100_000_000 / 3_600;
    const approachMs = (1_000_000 / mmPerSecond) * 1_000;
    const ms = blockedMs({
      scale: 1,
      lengthMm: 1_500_000,
      trainMm: 250_000,
      mmPerSecond,
      setUpMs: 6_000 + 12_000 + Math.round(approachMs),
      releaseMs: 6_000,
    });
    expect(ms).toBe(123_000);
  });

  it("layout: 2 + 1 + 0.6 m + 1.8 m + 1.3 m at 0.2 m/s + 1 = 22.5 s", () => {
    const ms = blockedMs({
      scale: 87,
      lengthMm: 1_800,
      trainMm: 1_300,
      mmPerSecond: 200,
      setUpMs: 2_000 + 1_000 + 3_000,
      releaseMs: 1_000,
    });
    expect(ms).toBe(22_500);
  });
});

describe("minimum headway", () => {
  const boxes = (...rows: [number, number, number][]): BlockingBox[] =>
    rows.map(([section, start, end]) => ({ section, start, end }));

  // Definition: Pachl, and Hansen & Pachl (from memory)
  it("is the greatest overlap of boxes over common sections, each counted from its own train's start", () => {
    const slow = boxes([0, 0, 60], [1, 40, 140], [2, 110, 220]);
    const fast = boxes([0, 0, 30], [1, 20, 70], [3, 60, 90]);
    expect(minimumHeadway(slow, fast)).toBe(120);
    expect(minimumHeadway(fast, slow)).toBe(30);
    expect(minimumHeadway(fast, boxes([9, 0, 50]))).toBe(0);
  });

  it("of a train behind its own like is what the clash sweep allows: one ms less clashes", () => {
    const path = (start: number) => [
      { section: 0, arriveMs: null, departMs: start },
      { section: 1, arriveMs: null, departMs: null },
      { section: 2, arriveMs: start + 60_000, departMs: null },
    ];
    // each is placed as it leaves and removed as it arrives, so that only the run itself is in the way
    const problem = (after: number) =>
      smallProblem({
        sections: [section("A", 1_000), section("B", 3_000), section("C", 2_000)],
        trains: [0, after].map((start, i) =>
          train(`T${i}`, 500, path(start), { placedMs: start, removedMs: start + 60_000 }),
        ),
      });
    const own = check(problem(0)).occupations.filter((o) => o.train === 0);
    const asBoxes = own.map((o) => ({ section: o.section, start: o.blocked.startMs, end: o.blocked.endMs }));
    const headway = minimumHeadway(asBoxes, asBoxes);
    expect(headway).toBeGreaterThan(0);
    expect(check(problem(headway)).findings).toEqual([]);
    expect(check(problem(headway - 1)).findings.map((f) => f.code)).toEqual(["section-clash"]);
  });
});

// UIC Code 406 (2004, 2013): compression and occupancy; the first two figures seen in print, the third calculated from the definition
describe("a compressed timetable", () => {
  const pairs = (table: Record<string, number>) => (first: string, second: string) =>
    table[first + second] as number;

  it("4,500 s and 900 s of supplement in 7,200 s occupy 75.0 %", () => {
    expect(occupancyRate(4_500, 900, 7_200)).toBe(0.75);
  });

  it("two kinds alternating at 120 s and 180 s make 300 s a cycle, 24 trains an hour", () => {
    const cycle = compressedCycle(["A", "B"], pairs({ AB: 120, BA: 180 }));
    expect(cycle).toBe(300);
    expect((2 * 3_600) / cycle).toBe(24);
  });

  it("one kind at 120 s runs 30 an hour, with 60 s of margin 20", () => {
    expect(3_600 / compressedCycle(["A"], () => 120)).toBe(30);
    expect(3_600 / (compressedCycle(["A"], () => 120) + 60)).toBe(20);
  });

  it("bunching like trains helps: ABAB takes 840 s or 23.3 % of an hour, AABB 720 s or 20.0 %", () => {
    const headway = pairs({ AA: 120, AB: 120, BB: 180, BA: 300 });
    expect(compressedCycle(["A", "B", "A", "B"], headway)).toBe(840);
    expect(compressedCycle(["A", "A", "B", "B"], headway)).toBe(720);
    expect(occupancyRate(840, 0, 3_600)).toBeCloseTo(0.2333, 4);
    expect(occupancyRate(720, 0, 3_600)).toBe(0.2);
  });
});
