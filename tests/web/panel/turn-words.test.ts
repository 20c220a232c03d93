import { describe, expect, it } from "vitest";
import type { SelectorTurn } from "../../../shared/selector-schedule.ts";
import { leeway, mostOn, purpose } from "../../../src/web/panel/turn-words.ts";

const turn = (given: Partial<SelectorTurn>): SelectorTurn => ({
  section: "S",
  from: null,
  to: "A",
  train: "3G04",
  reason: "runs",
  mayFromMs: 1_000,
  mayToMs: 5_000,
  mayFrom: "06:40",
  mayTo: "06:44",
  ...given,
});

describe("the words for a turn", () => {
  it("say how much time there is for it", () => {
    expect(leeway(2_000, turn({}))).toBe("any time 06:40–06:44");
    expect(leeway(1_000, turn({}))).toBe("latest 06:44");
    expect(leeway(5_000, turn({}))).toBe("earliest 06:40");
    expect(leeway(1_000, turn({ mayToMs: 1_000, mayTo: "06:40" }))).toBe("just then");
    // less than a second of the layout clock is no time
    expect(leeway(1_000, turn({ mayToMs: 1_100, mayTo: "06:40" }))).toBe("just then");
  });

  it("say whom it is for", () => {
    expect(purpose(turn({}))).toBe("3G04 runs");
    expect(purpose(turn({ reason: "stands" }))).toBe("3G04 stands");
    expect(purpose(turn({ reason: "digital" }))).toBe("3G04 is digital here");
  });

  it("count how many selectors are on at one time: one that is turned off as another is turned on is not counted twice", () => {
    const band = (fromMs: number, toMs: number) => ({ output: "A", fromMs, toMs, from: "", to: "" });
    const section = (code: string, ...bands: ReturnType<typeof band>[]) => ({
      code,
      name: code,
      turns: 0,
      bands,
    });
    expect(mostOn({ sections: [section("S", band(0, 10)), section("T", band(10, 20))] })).toEqual({
      most: 1,
      atMs: 0,
    });
    expect(mostOn({ sections: [section("S", band(0, 10)), section("T", band(5, 20))] })).toEqual({
      most: 2,
      atMs: 5,
    });
    expect(mostOn({ sections: [] })).toEqual({ most: 0, atMs: 0 });
  });
});
