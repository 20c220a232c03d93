import { expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { CurrentRange, Problem } from "../../../src/planner/problem.ts";
import { forRandomPlans, PATIENCE_MS } from "../../oracle/plans.ts";

/** Every third figure measured; the others may be off by more the later they are on the roster. */
const range = (ma: number, index: number): CurrentRange => ({
  lowMa: Math.floor((ma * 2) / (3 + (index % 3))),
  highMa: ma + 10 * index,
  measured: index % 3 === 0,
});

const withRanges = (problem: Problem): Problem => ({
  ...problem,
  locomotives: problem.locomotives.map((one, i) => ({
    ...one,
    ranges: { running: range(one.runningMa, i), standing: range(one.standingMa, i + 1) },
  })),
  rakes: problem.rakes.map((one, i) => ({ ...one, range: range(one.lightingMa, i) })),
});

/** The same plan with stock that draws as little, or as much, as it may. */
const drawing = (problem: Problem, end: "lowMa" | "highMa"): Problem => ({
  ...problem,
  locomotives: problem.locomotives.map((one) => ({
    ...one,
    runningMa: one.ranges?.running[end] ?? 0,
    standingMa: one.ranges?.standing[end] ?? 0,
  })),
  rakes: problem.rakes.map((one) => ({ ...one, lightingMa: one.range?.[end] ?? 0 })),
});

test("a peak lies between those of stock that draws as little and as much as it may, and falls into measured and assumed", {
  timeout: PATIENCE_MS,
}, () => {
  let partly = 0;
  forRandomPlans("certainty", (plain) => {
    const problem = withRanges(plain);
    const result = check(problem);
    const [low, high] = [check(drawing(problem, "lowMa")), check(drawing(problem, "highMa"))];
    for (const kind of ["districts", "supplies"] as const)
      for (const [i, load] of result[kind].entries()) {
        expect(load.lowMa).toBe(low[kind][i]?.peakMa);
        expect(load.highMa).toBe(high[kind][i]?.peakMa);
      }
    for (const load of [...result.districts, ...result.supplies, ...result.outputs, ...result.controllers]) {
      expect(load.lowMa).toBeLessThanOrEqual(load.peakMa);
      expect(load.highMa).toBeGreaterThanOrEqual(load.peakMa);
      expect(load.measuredMa + load.assumedMa + load.constantMa).toBe(load.peakMa);
      expect(Math.min(load.measuredMa, load.assumedMa)).toBeGreaterThanOrEqual(0);
      if (load.measuredMa > 0 && load.assumedMa > 0) partly++;
    }
  });
  expect(partly).toBeGreaterThan(0);
});
