import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import { computeMotions } from "../../src/planner/motion/compute-motions.ts";
import { headAt } from "../../src/planner/motion/motions.ts";
import { scaleSpeedKmh } from "../../src/planner/path/speed-faults.ts";
import { arrives, calls, departs, section, smallProblem, through, train } from "./small-problem.ts";

// The worked example of the project's design, recomputed by hand: scale 1:87, clock ratio 4, train of 1,200 mm,
// W1 departs 10:00, B1 arrives 10:04 and departs 10:06, E1 arrives 10:10 by the layout clock. Real seconds after 10:00.
const CLOCK_RATIO = 4;
const real = (layoutMinutes: number) => (layoutMinutes * 60) / CLOCK_RATIO;
const START = 600;
const problem = smallProblem({
  sections: [
    section("W1", 2_400),
    section("L1", 3_000),
    section("B1", 1_800),
    section("L2", 3_600),
    section("E1", 2_400),
  ],
  trains: [
    train("1", 1_200, [
      departs(0, START + real(0)),
      through(1),
      calls(2, START + real(4), START + real(6)),
      through(3),
      arrives(4, START + real(10)),
    ]),
  ],
});
const at = (second: number) => (START + second) * 1_000;

test("heads enter and tails clear at the worked example's instants, to the millisecond", () => {
  const { occupations } = check(problem);
  expect(occupations.map(({ section, enterMs, clearMs }) => [section, enterMs, clearMs])).toEqual([
    [0, null, at(15)],
    [1, at(0), at(52.5)],
    [2, at(37.5), at(102)],
    [3, at(90), at(138)],
    [4, at(126), null],
  ]);
});

test("with 5 s of set-up and release the blocking times are the worked example's", () => {
  const { occupations } = check(problem);
  const blocked = occupations.map(({ blocked }) => [blocked.startMs, blocked.endMs]);
  expect(blocked).toEqual([
    [0, at(20)], // stands there from the slot's start
    [at(-5), at(57.5)],
    [at(32.5), at(107)],
    [at(85), at(143)],
    [at(121), 3_600_000], // to the slot's end
  ]);
});

test("the runs are 80 and 100 mm/s, 25.056 and 31.32 scale km/h", () => {
  const motions = computeMotions(problem);
  const speed = (from: number, to: number) =>
    (headAt(motions, 0, at(to)) - headAt(motions, 0, at(from))) / (to - from);
  expect(speed(0, 60)).toBeCloseTo(80, 9);
  expect(speed(60, 90)).toBe(0);
  expect(speed(90, 150)).toBeCloseTo(100, 9);
  expect(scaleSpeedKmh(4_800, 60_000, 87)).toBeCloseTo(25.056, 9);
  expect(scaleSpeedKmh(6_000, 60_000, 87)).toBeCloseTo(31.32, 9);
});

test("the example runs: no finding", () => {
  expect(check(problem).findings).toEqual([]);
});
