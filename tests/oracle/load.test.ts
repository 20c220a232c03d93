import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Finding } from "../../src/planner/findings.ts";
import type { Problem, Supply } from "../../src/planner/problem.ts";
import { createLoadSampler, type Draw } from "./load.ts";
import { coveredMs, expectLoad, needMs } from "./load-samples.ts";
import { createNeedSampler } from "./need.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";
import { valueAt } from "./step-value.ts";

const PLAIN_LOADS = ["district-will-trip", "district-too-close", "supply-over-rating", "supply-too-close"];

test("districts and supplies carry in every millisecond what the stock in them draws", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("load", (problem) => {
    const { districts, supplies } = check(problem);
    const byMs = coveredMs(problem).map(createLoadSampler(problem));
    problem.districts.forEach(({ breakerMa: limitMa }, at) => {
      const draws = byMs.map((all) => all[at] as Draw[]);
      expectLoad(problem, districts[at] as (typeof districts)[number], { limitMa, constantMa: 0, draws });
    });
    problem.supplies.forEach(({ ratingMa: limitMa, accessoryMa: constantMa }, at) => {
      const draws = byMs.map((all) =>
        all.filter((_, district) => problem.districts[district]?.supply === at).flat(),
      );
      expectLoad(problem, supplies[at] as (typeof supplies)[number], { limitMa, constantMa, draws });
    });
  });
});

test("a district or supply is found too high from its first to its last such millisecond", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("load findings", (problem) => {
    const { findings } = check(problem);
    const instants = coveredMs(problem);
    const byMs = instants.map(createLoadSampler(problem));
    problem.districts.forEach(({ breakerMa }, at) => {
      const mine = findings.filter(
        ({ districts, code }) => districts.includes(at) && PLAIN_LOADS.includes(code),
      );
      const values = byMs.map((all) => total(all[at] as Draw[], 0));
      expectFinding(problem, mine, values, breakerMa, ["district-will-trip", "district-too-close"]);
    });
    problem.supplies.forEach(({ ratingMa, accessoryMa }: Supply, at) => {
      const mine = findings.filter(
        ({ supplies, code }) => supplies.includes(at) && PLAIN_LOADS.includes(code),
      );
      const fed = (_: Draw[], district: number) => problem.districts[district]?.supply === at;
      const values = byMs.map((all) => total(all.filter(fed).flat(), accessoryMa));
      expectFinding(problem, mine, values, ratingMa, ["supply-over-rating", "supply-too-close"]);
    });
  });
});

test("handsets are needed in every millisecond by the trains then driven", { timeout: PATIENCE_MS }, () => {
  forRandomPlans("handsets", (problem) => {
    const { handsets, findings } = check(problem);
    const instants = needMs(problem);
    const byMs = instants.map(createNeedSampler(problem));
    problem.commandSystems.forEach(({ handsets: stock }, system) => {
      const report = handsets[system] as (typeof handsets)[number];
      const needs = byMs.map((all) => all[system] as number[]);
      const counts = needs.map((trains) => trains.length);
      const peak = Math.max(0, ...counts);
      expect(instants.map((ms) => valueAt(report.curve, ms))).toEqual(counts);
      const peakAt = counts.indexOf(peak);
      expect(report).toMatchObject({
        stock,
        peak,
        peakAtMs: peak > 0 ? instants[peakAt] : problem.slot.startMs,
        overMs: counts.filter((count) => count > stock).length,
      });
      expect([...report.trains].sort()).toEqual(peak > 0 ? [...(needs[peakAt] ?? [])].sort() : []);
      const found = findings.filter(
        ({ code, commandSystems }) => code === "handsets-too-few" && commandSystems.includes(system),
      );
      expect(found.map(({ measured, limit }) => [measured, limit])).toEqual(
        peak > stock ? [[peak, stock]] : [],
      );
    });
  });
});

function total(draws: readonly Draw[], constantMa: number): number {
  return draws.reduce((sum, { ma }) => sum + ma, constantMa);
}

function expectFinding(
  problem: Problem,
  found: readonly Finding[],
  values: readonly number[],
  limitMa: number,
  [over, close]: readonly [string, string],
): void {
  const line = Math.round(limitMa * (1 - problem.policy.reserve) * 1e6) / 1e6;
  const peak = Math.max(...values);
  const limit = peak > limitMa ? limitMa : line;
  const above = values.flatMap((value, at) => (value > limit ? [problem.slot.startMs + at] : []));
  const expected = {
    code: peak > limitMa ? over : close,
    severity: peak > limitMa ? "stops" : "warns",
    measured: peak,
    limit,
    overMs: above.length,
    span: { startMs: above[0], endMs: (above.at(-1) ?? 0) + 1 },
    atMs: problem.slot.startMs + values.indexOf(peak),
  };
  expect(found).toMatchObject(peak > line ? [expected] : []);
}
