import { describe, expect, it } from "vitest";
import { placesTonight } from "../../../src/planner/night/tonight.ts";

const tonight = (...replacements: [failed: string, by: string | null][]) =>
  placesTonight(
    ["A", "B"],
    replacements.map(([failed, by]) => ({ failed, by })),
  ).map((place) => place.tonight);

describe("what a train has tonight", () => {
  it("is what the timetable gives it, unless something failed", () => {
    expect(tonight()).toEqual(["A", "B"]);
    expect(tonight(["C", "D"])).toEqual(["A", "B"]);
    expect(tonight(["B", null])).toEqual(["A", "B"]);
  });

  it("is what took the place of what failed, and of what failed after it", () => {
    expect(tonight(["A", "C"])).toEqual(["C", "B"]);
    expect(tonight(["C", "D"], ["A", "C"])).toEqual(["D", "B"]);
    expect(tonight(["A", "C"], ["C", null])).toEqual(["C", "B"]);
  });

  it("is found even where a locomotive took its own place back", () => {
    expect(["A", "C"]).toContain(tonight(["A", "C"], ["C", "A"])[0]);
  });
});
