import { describe, expect, it } from "vitest";
import { toDigitalCost, toMostTrains } from "../../../src/features/costing/mapper.ts";
import { costAllDigital } from "../../../src/planner/costing/all-digital.ts";
import type { Stretch } from "../../../src/planner/costing/most-trains.ts";
import { lines } from "../../planner/costing/lines.ts";
import { arrives, departs, locomotive, section, smallProblem, train } from "../../planner/small-problem.ts";

describe("how far the equipment goes, in a sentence", () => {
  const problem = {
    ...lines(1),
    controllers: [{ code: "K", transformerMa: 625, accessoryMa: 0 }],
    outputs: [{ code: "A", controller: 0, ratingMa: 1_000 }],
  };
  const stretch = (kind: Stretch["kind"], trains: number): Stretch => ({
    kind,
    at: 0,
    used: 1,
    has: 1,
    trains,
  });
  const told = (now: number, first?: Stretch) =>
    toMostTrains(problem, { now, most: first?.trains ?? null, stretches: first ? [first] : [] }).sentence;

  it("names what gives first", () => {
    expect(told(3, stretch("addresses", 5))).toBe(
      "3 trains run at once now; with what there is it could be 5, and the decoder addresses that C takes at once would give first.",
    );
    expect(told(1, stretch("transformer", 1))).toBe(
      "1 train runs at once now; with what there is it could be 1, and the transformer of controller K would give first.",
    );
  });

  it("says so where what runs now is too much already", () => {
    expect(told(3, stretch("handsets", 2))).toBe(
      "3 trains run at once now; with what there is it could be only 2, and handsets of C would give first.",
    );
    expect(told(3, stretch("supply", 0))).toBe(
      "3 trains run at once now; with what there is it could be none, and supply S would give first.",
    );
  });

  it("says so where nothing tells it, and where nothing limits it", () => {
    expect(told(0)).toBe("No train runs, and so nothing tells how many could run at once.");
    expect(told(2)).toBe("Nothing that the club has limits how many trains run at once.");
  });
});

it("counts the same districts and boosters in the sentence as in the table", () => {
  // one section draws 4 A, its neighbours nothing
  const problem = smallProblem({
    sections: ["U0", "H", "U1"].map((code) => section(code, 2_000)),
    locomotives: [locomotive("E", { runningMa: 4_000 })],
    trains: [
      train("A", 400, [departs(1, 100), arrives(1, 200)], { power: [{ locomotive: 0, atRear: false }] }),
    ],
  });
  const sizes = { breakerMa: 3_000, ratingMa: 5_000 };
  const { sentence, districts, supplies, tooMuch } = toDigitalCost(
    problem,
    costAllDigital(problem, sizes),
    sizes,
  );
  expect(sentence).toBe(
    "All-digital this timetable needs 2 handsets, 0 decoders more, 1 district and 1 booster.",
  );
  expect(districts).toEqual([{ sections: ["H", "U0", "U1"], peakMa: 4_000 }]);
  expect(supplies).toHaveLength(1);
  expect(tooMuch).toEqual(["H"]);
});
