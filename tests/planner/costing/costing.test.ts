import { describe, expect, it } from "vitest";
import { costAllAnalog } from "../../../src/planner/costing/all-analog.ts";
import { costAllDigital } from "../../../src/planner/costing/all-digital.ts";
import { forRandomPlans, PATIENCE_MS } from "../../oracle/plans.ts";
import { arrives, departs, section, smallProblem, train } from "../small-problem.ts";
import { lines } from "./lines.ts";

describe("all-analog", () => {
  it("takes an output for each train on its way at once, and each reaches what its trains run over", () => {
    const cost = costAllAnalog(lines(3));
    expect(cost).toMatchObject({
      outputs: 3,
      isAssigned: true,
      divide: [],
      peakOutputMa: 500,
      peakTogetherMa: 1_500,
    });
    expect(cost.reach.map((sections) => sections.length)).toEqual([3, 3, 3]);
    expect(cost.reach.flat().sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    // each of nine sections on, and those off in which a train then stands
    expect(cost.turns?.made).toBe(12);
  });

  it("cuts what trains share now into as many sections as there are trains in it", () => {
    const yard = smallProblem({
      sections: [section("Y", 4_000, { shared: true, handStaging: true })],
      links: [],
      trains: ["1", "2", "3"].map((code, i) =>
        train(code, 500, [departs(0, 100 + i), arrives(0, 200 + i)], {
          placedMs: 50_000,
          removedMs: 300_000,
        }),
      ),
    });
    expect(costAllAnalog(yard).divide).toEqual([{ section: 0, parts: 3 }]);
  });

  it("names decoders that may not run so", () => {
    const problem = lines(2);
    const decoder = { addressKind: "short", address: 3, analogAllowed: false } as const;
    const locomotives = problem.locomotives.map((one, i) => (i === 1 ? { ...one, decoder } : one));
    expect(costAllAnalog({ ...problem, locomotives }).unfit).toEqual([1]);
  });
});

describe("all-digital", () => {
  const sizes = { breakerMa: 2_500, ratingMa: 5_000 };

  it("makes districts that each bear their peak with the reserve free, and boosters of them", () => {
    // eight trains of 500 mA: four to a district of 2.5 A with 20 % free, all eight on one booster of 5 A
    const cost = costAllDigital(lines(8), sizes);
    expect(cost).toMatchObject({
      handsets: 8,
      handsetsWithSpares: 9,
      peakMa: 4_000,
      leastDistricts: 2,
      leastSupplies: 1,
    });
    expect(cost.districts.map(({ peakMa }) => peakMa)).toEqual([2_000, 2_000]);
    expect(cost.supplies).toEqual([{ districts: [0, 1], peakMa: 4_000 }]);
    expect(cost.districts.flatMap(({ sections }) => sections).sort((a, b) => a - b)).toHaveLength(24);
  });

  it("says which locomotives want a decoder, and which section is too much for any breaker", () => {
    const problem = lines(2);
    const locomotives = problem.locomotives.map((one, i) =>
      i === 0 ? { ...one, decoder: null, runningMa: 2_100 } : one,
    );
    const cost = costAllDigital({ ...problem, locomotives }, sizes);
    expect(cost.decoders).toEqual([0]);
    expect(cost.tooMuch).toEqual([0, 1, 2]);
  });

  it("holds every district and booster of any plan within its size, and is never below the bound", {
    timeout: PATIENCE_MS,
  }, () => {
    forRandomPlans("costing", (problem) => {
      const cost = costAllDigital(problem, { breakerMa: 600, ratingMa: 900 });
      const free = 1 - problem.policy.reserve;
      const used = new Set(cost.districts.flatMap(({ sections }) => sections));
      expect(used.size).toBe(problem.sections.length);
      for (const { sections, peakMa } of cost.districts)
        if (!sections.some((at) => cost.tooMuch.includes(at))) expect(peakMa).toBeLessThanOrEqual(600 * free);
      for (const { districts, peakMa } of cost.supplies)
        if (districts.length > 1) expect(peakMa).toBeLessThanOrEqual(900 * free);
      if (cost.tooMuch.length === 0)
        expect(cost.districts.length).toBeGreaterThanOrEqual(cost.leastDistricts);
    });
  });
});
