import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { Problem, Train } from "../../../src/planner/problem.ts";
import { standsOf } from "../../../src/planner/verify/standing-stock.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";

/**
 * Design section 4: stock stands "from a stated placing time", until "a stated removal time". One locomotive, 100 mA while
 * it stands, 500 mA while it runs, works A from S0 to S1 and later B; each section has a district of its own.
 */
const ENGINE = [{ locomotive: 0, atRear: false }];
const OUT = { power: ENGINE };

function twoWorkings(
  from: number,
  a: Partial<Train>,
  b: Partial<Train>,
  other: readonly Train[] = [],
): Problem {
  const road = (code: string, district: number) => section(code, 2_000, { handStaging: true, district });
  const fed = (code: string) => ({ ...PLAIN.district, code, supply: 0, breakerMa: 10_000 });
  return smallProblem({
    policy: policyWith({ setUpMs: 0, releaseMs: 0 }),
    sections: [road("S0", 0), road("S1", 1)],
    districts: [fed("D0"), fed("D1")],
    locomotives: [
      locomotive("E", { runningMa: 500, standingMa: 100 }),
      locomotive("F", { runningMa: 500, standingMa: 100 }),
    ],
    trains: [
      train("A", 400, [departs(0, 100), arrives(1, 200)], { ...OUT, ...a }),
      train("B", 400, [departs(from, 2_000), arrives(1 - from, 2_100)], { ...OUT, ...b }),
      ...other,
    ],
  });
}

/** Seconds for which the train has the section, standing or running. */
function blocked(problem: Problem, train: number, section: number): [number, number][] {
  return check(problem)
    .occupations.filter((one) => one.train === train && one.section === section)
    .map(({ blocked: { startMs, endMs } }) => [startMs / 1_000, endMs / 1_000]);
}

/** What a district carries at an instant. */
function drawAt(problem: Problem, district: number, second: number): number {
  const curve = check(problem).districts[district]?.curve ?? [];
  return curve.findLast(([atMs]) => atMs <= second * 1_000)?.[1] ?? 0;
}

/** What the judge of selector schedules makes of it, seconds. */
function judged(problem: Problem, train: number): [number, number][] {
  return standsOf(problem)
    .filter((stand) => stand.train === train)
    .map(({ span: { startMs, endMs } }) => [startMs / 1_000, endMs / 1_000]);
}

describe("stock that hands take off the track between two workings", () => {
  const problem = twoWorkings(0, { removedMs: 300_000 }, { placedMs: 1_900_000 });

  test("leaves its road at the stated removal and takes the next at the stated placing", () => {
    expect(blocked(problem, 0, 1)).toEqual([[100, 300]]);
    expect(blocked(problem, 1, 0)).toEqual([[1_900, 2_020]]);
    expect(judged(problem, 0)).toEqual([
      [0, 100],
      [200, 300],
    ]);
    expect(judged(problem, 1)).toEqual([
      [1_900, 2_000],
      [2_100, 3_600],
    ]);
  });

  test("draws nothing while it is off the track, and is drawn for once", () => {
    expect([250, 299, 300, 1_899].map((second) => drawAt(problem, 1, second))).toEqual([100, 100, 0, 0]);
    expect([1_000, 1_899, 1_900, 1_999].map((second) => drawAt(problem, 0, second))).toEqual([
      0, 0, 100, 100,
    ]);
  });

  test("is in nobody's way meanwhile", () => {
    const through = train("C", 400, [departs(0, 1_000), arrives(1, 1_100)], {
      power: [{ locomotive: 1, atRear: false }],
      placedMs: 990_000,
      removedMs: 1_110_000,
    });
    const busy = twoWorkings(0, { removedMs: 300_000 }, { placedMs: 1_900_000 }, [through]);
    expect(check(busy).findings).toEqual([]);
  });

  test("may come back to the same road", () => {
    const same = twoWorkings(1, { removedMs: 300_000 }, { placedMs: 1_900_000 });
    expect(blocked(same, 0, 1)).toEqual([[100, 300]]);
    expect(blocked(same, 1, 1)).toEqual([[1_900, 2_020]]);
    expect([299, 300, 1_899, 1_900].map((second) => drawAt(same, 1, second))).toEqual([100, 0, 0, 100]);
  });

  test("is on its next road at once where no placing is stated", () => {
    const unsaid = twoWorkings(0, { removedMs: 300_000 }, {});
    expect(blocked(unsaid, 0, 1)).toEqual([[100, 300]]);
    expect(blocked(unsaid, 1, 0)).toEqual([[300, 2_020]]);
    expect([drawAt(unsaid, 1, 1_000), drawAt(unsaid, 0, 1_000)]).toEqual([0, 100]);
  });
});

test("a stated placing on another road carries stock there, and its old road is free from then", () => {
  const problem = twoWorkings(0, {}, { placedMs: 1_900_000 });
  expect(blocked(problem, 0, 1)).toEqual([[100, 1_900]]);
  expect(blocked(problem, 1, 0)).toEqual([[1_900, 2_020]]);
  expect([1_899, 1_900].map((second) => drawAt(problem, 1, second))).toEqual([100, 0]);
  expect([1_899, 1_900].map((second) => drawAt(problem, 0, second))).toEqual([0, 100]);
  expect(judged(problem, 0)).toContainEqual([200, 1_900]);
});

test("stock that stands where it is wanted next stays there until it departs, whatever placing is stated", () => {
  const problem = twoWorkings(1, {}, { placedMs: 1_900_000 });
  expect(blocked(problem, 0, 1)).toEqual([[100, 2_000]]);
  expect([201, 1_000, 1_999].map((second) => drawAt(problem, 1, second))).toEqual([100, 100, 100]);
});

test("a removal after the next departure comes too late to count", () => {
  const problem = twoWorkings(1, { removedMs: 2_500_000 }, {});
  expect(blocked(problem, 0, 1)).toEqual([[100, 2_000]]);
});
