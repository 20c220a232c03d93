import { expect, test } from "vitest";
import { costAllDigital } from "../../src/planner/costing/all-digital.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { createLoadSampler, type Draw } from "./load.ts";
import { coveredMs } from "./load-samples.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

const SIZES = { breakerMa: 600, ratingMa: 900 };

/** Every section digital, and a district of its own. */
const digital = (problem: Problem): Problem => ({
  ...problem,
  districts: problem.sections.map((_, at) => ({
    code: `${at}`,
    supply: 0,
    breakerMa: 1,
    tripDelayMs: 0,
    wiring: null,
    tested: "unsaid",
  })),
  sections: problem.sections.map((section, at) => ({ ...section, control: "digital", district: at })),
});

/** What sections on one breaker draw at an instant: whatever is in several of them once. */
function drawnBy(draws: readonly (readonly Draw[])[], sections: readonly number[]): number {
  const each = new Map<string, number>();
  for (const section of sections)
    for (const { train, item, ma } of draws[section] ?? []) each.set(`${train} ${item}`, ma);
  return [...each.values()].reduce((sum, ma) => sum + ma, 0);
}

/** Whether one gets from the first of the sections to every other without leaving them. */
function isConnected({ links }: Problem, sections: readonly number[]): boolean {
  const reached = new Set(sections.slice(0, 1));
  for (let before = -1; before !== reached.size; ) {
    before = reached.size;
    for (const { from, to } of links)
      if (sections.includes(from) && sections.includes(to) && (reached.has(from) || reached.has(to)))
        reached.add(from).add(to);
  }
  return reached.size === sections.length;
}

test("districts and boosters of any plan draw what every millisecond says, hang together and are as large as they can be", {
  timeout: PATIENCE_MS,
}, () => {
  let many = 0;
  let idle = 0;
  forRandomPlans("costing", (problem) => {
    const cost = costAllDigital(problem, SIZES);
    const { districts, supplies, tooMuch } = cost;
    const byMs = coveredMs(problem).map(createLoadSampler(digital(problem)));
    const most = (value: (draws: readonly (readonly Draw[])[]) => number) => Math.max(0, ...byMs.map(value));
    const drawn = ({ sections }: { readonly sections: readonly number[] }) =>
      most((draws) => drawnBy(draws, sections));
    // all lines of random plans are one piece of track
    const all = problem.sections.map((_, at) => at);
    expect(cost.peakMa).toBe(drawn({ sections: all }));
    const breakerMa = Math.round(SIZES.breakerMa * (1 - problem.policy.reserve));
    const boosterMa = Math.round(SIZES.ratingMa * (1 - problem.policy.reserve));

    expect(districts.map(({ peakMa }) => peakMa)).toEqual(districts.map(drawn));
    const used = districts.flatMap(({ sections }) => sections);
    expect(new Set(used).size).toBe(used.length);
    expect(used.length).toBe(cost.peakMa === 0 ? 0 : all.length);
    for (const { sections } of districts) expect(isConnected(problem, sections)).toBe(true);
    expect(tooMuch).toEqual(all.filter((at) => drawn({ sections: [at] }) > breakerMa));
    for (const { sections, peakMa } of districts)
      if (!sections.some((at) => tooMuch.includes(at))) expect(peakMa).toBeLessThanOrEqual(breakerMa);

    const onBooster = (of: readonly number[]) =>
      most((draws) => of.reduce((sum, at) => sum + drawnBy(draws, districts[at]?.sections ?? []), 0));
    for (const { districts: of, peakMa, accessoryMa } of supplies) {
      expect(peakMa - accessoryMa).toBe(onBooster(of));
      if (of.length > 1 || accessoryMa > 0) expect(peakMa).toBeLessThanOrEqual(boosterMa);
    }
    expect(supplies.flatMap((one) => one.districts).sort((a, b) => a - b)).toEqual([...districts.keys()]);
    const accessories = [...problem.supplies, ...problem.controllers].reduce(
      (sum, one) => sum + one.accessoryMa,
      0,
    );
    expect(supplies.reduce((sum, { accessoryMa }) => sum + accessoryMa, 0)).toBe(accessories);

    // no two side by side could be one
    const districtOf = (section: number) => districts.findIndex(({ sections }) => sections.includes(section));
    const boosterOf = (district: number) => supplies.findIndex((one) => one.districts.includes(district));
    for (const { from, to } of problem.links) {
      const [a, b] = [districtOf(from), districtOf(to)];
      if (a === b) continue;
      const together = [a, b].flatMap((at) => districts[at]?.sections ?? []);
      expect(drawn({ sections: together })).toBeGreaterThan(breakerMa);
      const [c, d] = [boosterOf(a), boosterOf(b)];
      if (c !== d)
        expect(onBooster([c, d].flatMap((at) => supplies[at]?.districts ?? []))).toBeGreaterThan(boosterMa);
    }
    if (tooMuch.length === 0) {
      expect(districts.length).toBeGreaterThanOrEqual(cost.leastDistricts);
      expect(supplies.length).toBeGreaterThanOrEqual(cost.leastSupplies);
    }
    if (districts.length > 1) many++;
    if (all.some((at) => drawn({ sections: [at] }) === 0)) idle++;
  });
  expect(Math.min(many, idle)).toBeGreaterThan(20);
});
