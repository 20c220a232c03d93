import { describe, expect, it } from "vitest";
import { toMostTrains } from "../../../src/features/costing/mapper.ts";
import type { Stretch } from "../../../src/planner/costing/most-trains.ts";
import { lines } from "../../planner/costing/lines.ts";

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
