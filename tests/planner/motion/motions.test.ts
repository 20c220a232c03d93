import { describe, expect, test } from "vitest";
import { computeMotions } from "../../../src/planner/motion/compute-motions.ts";
import { trainGraphPoints } from "../../../src/planner/motion/graph.ts";
import { callsOf, clearOf, enterOf, headAt } from "../../../src/planner/motion/motions.ts";
import type { PathEntry } from "../../../src/planner/problem.ts";
import { arrives, calls, departs, section, smallProblem, through, train } from "../small-problem.ts";

/** Motion of one train of 500 mm over sections of 1,000 mm each, or of the lengths given. */
function motionOf(path: readonly PathEntry[], lengthMm = 500, sections = [1_000, 1_000, 1_000, 1_000]) {
  return computeMotions(
    smallProblem({
      sections: sections.map((mm, i) => section(`S${i}`, mm)),
      trains: [train("1", lengthMm, path)],
    }),
  );
}

const instants = (motions: ReturnType<typeof motionOf>, entries: number) =>
  Array.from({ length: entries }, (_, entry) => [enterOf(motions, 0, entry), clearOf(motions, 0, entry)]);

describe("a train", () => {
  test("that stands with its head on a boundary enters the next section when it leaves, not when it arrives", () => {
    const motions = motionOf([departs(0, 0), calls(1, 10, 50), arrives(2, 60)]);
    expect(enterOf(motions, 0, 2)).toBe(50_000);
  });

  test("whose tail stands on a boundary has cleared the section when it arrives, not when it leaves", () => {
    const motions = motionOf([departs(0, 0), calls(1, 10, 50), arrives(2, 60)], 1_000);
    expect(clearOf(motions, 0, 0)).toBe(10_000);
  });

  test("that passes a timed point goes on at another speed without standing there", () => {
    const motions = motionOf([departs(0, 0), calls(1, 10, 10), arrives(2, 30)]);
    expect(instants(motions, 3)).toEqual([
      [null, 5_000],
      [0, 20_000],
      [10_000, null],
    ]);
    expect(headAt(motions, 0, 20_000)).toBe(2_500);
  });

  test("longer than the section it starts in is taken to stand in that one only", () => {
    const motions = motionOf([departs(0, 0), through(1), through(2), arrives(3, 30)], 2_000);
    expect(enterOf(motions, 0, 1)).toBe(0);
    expect(clearOf(motions, 0, 0)).toBe(20_000);
  });

  test("longer than its last section stands to the end in all that it covers", () => {
    const motions = motionOf([departs(0, 0), through(1), through(2), arrives(3, 30)], 2_001);
    expect([0, 1, 2, 3].map((entry) => clearOf(motions, 0, entry))).toEqual([20_010, null, null, null]);
  });

  test("that reverses names its section again, and is in it twice", () => {
    const motions = motionOf([departs(0, 0), calls(1, 10, 40), through(1), arrives(0, 60)]);
    expect(instants(motions, 4)).toEqual([
      [null, 5_000],
      [0, 45_000],
      [40_000, 55_000],
      [50_000, null],
    ]);
  });

  test("with a path of one section departs and arrives there without moving on", () => {
    const motions = motionOf([{ section: 0, arriveMs: 9_000, departMs: 4_000 }]);
    expect(callsOf(motions, 0).map(({ arriveMs }) => arriveMs)).toEqual([4_000, 9_000]);
    expect(instants(motions, 1)).toEqual([[null, null]]);
    expect(headAt(motions, 0, 6_000)).toBe(1_000);
  });

  test("may run before the session starts", () => {
    const motions = motionOf([departs(0, -100), through(1), arrives(2, -80)]);
    expect(enterOf(motions, 0, 2)).toBe(-90_000);
  });

  test("with a time that goes back, or a run that takes none, has no motion", () => {
    for (const path of [
      [departs(0, 10), calls(1, 20, 19), arrives(2, 30)],
      [departs(0, 10), calls(1, 9, 20), arrives(2, 30)],
      [departs(0, 10), calls(1, 10, 20), arrives(2, 30)],
      [{ section: 0, arriveMs: 4_000, departMs: 9_000 }],
    ])
      expect(callsOf(motionOf(path), 0)).toEqual([]);
  });

  test("too many days away is refused", () => {
    expect(() => motionOf([departs(0, 0), arrives(1, 13 * 86_400)])).toThrow(RangeError);
    expect(() => motionOf([departs(0, -13 * 86_400), arrives(1, 0)])).toThrow(RangeError);
  });
});

describe("the train graph's points", () => {
  test("are where the train stops, goes on, and crosses from section to section", () => {
    const motions = motionOf([departs(0, 0), through(1), calls(2, 20, 50), arrives(3, 60)]);
    const points = trainGraphPoints(motions, 0).map(({ atMs, pathEntry, mm }) => [
      atMs / 1_000,
      pathEntry,
      mm,
    ]);
    expect(points).toEqual([
      [0, 0, 1_000],
      [0, 0, 1_000],
      [0, 1, 0],
      [10, 1, 1_000],
      [10, 2, 0],
      [20, 2, 1_000],
      [50, 2, 1_000],
      [50, 2, 1_000],
      [50, 3, 0],
      [60, 3, 1_000],
    ]);
  });

  test("are none for a train whose times run backwards", () => {
    expect(trainGraphPoints(motionOf([departs(0, 9), arrives(1, 3)]), 0)).toEqual([]);
  });
});
