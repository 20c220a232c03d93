import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { FindingCode } from "../../src/planner/findings.ts";
import type { PathEntry, Problem, Train } from "../../src/planner/problem.ts";
import { createRecheck, type Times, type Verdict } from "../../src/planner/recheck.ts";
import type { CheckResult } from "../../src/planner/result.ts";
import { makePlan } from "../bench/made-plan.ts";
import { createRandom, type Random } from "../bench/random.ts";
import { forRandomPlans } from "../oracle/plans.ts";
import { sameStock } from "../oracle/stock.ts";
import { arrives, departs, section, smallProblem, through, train } from "./small-problem.ts";

const SEED = Number(process.env.RECHECK_SEED ?? Date.now() % 2_147_483_647);
const MOVES_A_PLAN = 8;

/** The verdict as the full check has it; clashing pairs counted by comparing all with all. */
function fullVerdict(problem: Problem): Verdict {
  const result = check(problem);
  const count = (code: FindingCode) => result.findings.filter((finding) => finding.code === code).length;
  return {
    clashes: clashingPairs(problem, result),
    crowds: count("shared-section-too-full"),
    districtsTripping: count("district-will-trip"),
    districtsClose: count("district-too-close"),
    suppliesOver: count("supply-over-rating"),
    suppliesClose: count("supply-too-close"),
    systemsShort: count("handsets-too-few"),
  };
}

function clashingPairs(problem: Problem, { occupations }: CheckResult): number {
  let pairs = 0;
  for (const [i, a] of occupations.entries())
    for (const b of occupations.slice(i + 1)) {
      const place = problem.sections[a.section];
      if (a.section !== b.section || (place?.shared && place.control === "digital")) continue;
      const start = Math.max(a.blocked.startMs, b.blocked.startMs);
      const end = Math.min(a.blocked.endMs, b.blocked.endMs);
      if (start < end && !sameStock(problem, a.train, b.train)) pairs++;
    }
  return pairs;
}

/** The train earlier or later, now and then with its times in disorder or a dwell of another length. */
function otherTimes(random: Random, { path, placedMs, removedMs }: Train, mostMs: number): Times {
  const by = random.whole(-mostMs, mostMs);
  const stretch = random.chance(0.3) ? random.whole(-mostMs, mostMs) : 0;
  const from = random.whole(0, path.length);
  const moved = (ms: number | null, entry: number) =>
    ms === null ? null : ms + by + (entry >= from ? stretch : 0);
  return {
    path: path.map(
      (entry, i): PathEntry => ({
        section: entry.section,
        arriveMs: moved(entry.arriveMs, i),
        departMs: moved(entry.departMs, i),
      }),
    ),
    placedMs: moved(placedMs, 0),
    removedMs: moved(removedMs, path.length),
  };
}

function moveAbout(random: Random, given: Problem, moves: number, mostMs: number): void {
  const recheck = createRecheck(given);
  expect(recheck.verdict()).toEqual(fullVerdict(given));
  let problem = given;
  for (let i = 0; i < moves && given.trains.length > 0; i++) {
    const train = random.whole(0, given.trains.length - 1);
    const times = otherTimes(random, problem.trains[train] as Train, mostMs);
    const trains = problem.trains.map((other, index) => (index === train ? { ...other, ...times } : other));
    problem = { ...problem, trains };
    expect(recheck.move(train, times)).toEqual(fullVerdict(problem));
  }
}

test("after each of thousands of random moves the verdict is the full check's", { timeout: 300_000 }, () => {
  const random = createRandom(SEED);
  console.log(`moves: ${MOVES_A_PLAN} a plan, seed ${SEED}`);
  forRandomPlans("recheck", (problem) => moveAbout(random, problem, MOVES_A_PLAN, 200));
});

test("so it is on a railway of 60 sections with 40 trains", { timeout: 300_000 }, () => {
  const random = createRandom(SEED);
  for (let plan = 0; plan < 5; plan++) moveAbout(random, makePlan(SEED + plan, 40, 60), 60, 300_000);
});

const TWO_TRAINS = smallProblem({
  sections: [section("A", 1_000), section("B", 2_000), section("C", 1_000)],
  trains: [
    train("1", 500, [departs(0, 100), through(1), arrives(2, 140)], {
      placedMs: 100_000,
      removedMs: 140_000,
    }),
    train("2", 500, [departs(0, 300), through(1), arrives(2, 340)], {
      placedMs: 300_000,
      removedMs: 340_000,
    }),
  ],
});

test("a train moved onto another clashes with it in every section, and moved back no longer does", () => {
  const recheck = createRecheck(TWO_TRAINS);
  const [first, second] = TWO_TRAINS.trains as [Train, Train];
  expect(recheck.verdict().clashes).toBe(0);
  expect(recheck.move(1, first).clashes).toBe(3);
  expect(recheck.move(1, second).clashes).toBe(0);
});

test("a move to other sections, or with times at other entries, is refused", () => {
  const recheck = createRecheck(TWO_TRAINS);
  const stand = { placedMs: null, removedMs: null };
  expect(() => recheck.move(0, { ...stand, path: [departs(0, 1), arrives(2, 9)] })).toThrow(RangeError);
  const stopping = [departs(0, 1), { section: 1, arriveMs: 4_000, departMs: 5_000 }, arrives(2, 9)];
  expect(() => recheck.move(0, { ...stand, path: stopping })).toThrow(RangeError);
});
