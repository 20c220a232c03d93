import { describe, expect, it } from "vitest";
import { costAllAnalog } from "../../../src/planner/costing/all-analog.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";
import { lines } from "./lines.ts";

const head = (locomotive: number) => ({ locomotive, atRear: false });

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

  it("feeds accessories too, those of today's boosters and of today's controllers", () => {
    const plain = lines(3);
    const [supply] = plain.supplies;
    if (!supply) throw new Error("a supply was made");
    const cost = costAllAnalog({
      ...plain,
      supplies: [{ ...supply, accessoryMa: 700 }],
      controllers: [{ code: "K", transformerMa: 1_000, accessoryMa: 200 }],
    });
    // three trains of 500, and 700 + 200
    expect(cost).toMatchObject({ peakTogetherMa: 2_400, accessoriesMa: 900, peakOutputMa: 500 });
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

  describe("of a terminus that trains may share", () => {
    const policy = policyWith({ pickUpMs: 0, handInMs: 0 });
    const sections = [section("S", 4_000), section("Y", 4_000, { shared: true })];
    const engines = ["E", "F"].map((code) => locomotive(code, { runningMa: 500 }));

    it("cuts nothing where one locomotive comes and goes, as two trains", () => {
      const problem = smallProblem({
        policy,
        sections,
        locomotives: engines,
        trains: [
          train("A", 400, [departs(0, 100), arrives(1, 200)], { power: [head(0)] }),
          train("B", 400, [departs(1, 400), arrives(0, 500)], { power: [head(0)] }),
        ],
      });
      expect(costAllAnalog(problem)).toMatchObject({ divide: [], outputs: 1 });
    });

    it("cuts it in two where one stands while another comes, though both leave coupled", () => {
      const problem = smallProblem({
        policy,
        sections,
        locomotives: engines,
        trains: [
          train("A", 400, [departs(0, 100), arrives(1, 200)], { power: [head(0)] }),
          train("C", 400, [departs(0, 300), arrives(1, 400)], { power: [head(1)] }),
          train("B", 800, [departs(1, 600), arrives(0, 700)], { power: [head(0), head(1)] }),
        ],
      });
      expect(costAllAnalog(problem).divide).toEqual([{ section: 1, parts: 2 }]);
    });
  });

  it("names decoders that may not run so", () => {
    const problem = lines(2);
    const decoder = { addressKind: "short", address: 3, analogAllowed: false } as const;
    const locomotives = problem.locomotives.map((one, i) => (i === 1 ? { ...one, decoder } : one));
    expect(costAllAnalog({ ...problem, locomotives }).unfit).toEqual([1]);
  });
});
