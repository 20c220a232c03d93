import { check } from "../../src/planner/check.ts";
import { compilePlan } from "../../src/planner/compile-plan.ts";
import type { Problem, Train } from "../../src/planner/problem.ts";
import { createRecheck, type Times } from "../../src/planner/recheck.ts";
import { sweepPlan } from "../../src/planner/sweep.ts";
import { makePlan } from "./made-plan.ts";
import { median, medianTimes } from "./measure.ts";
import { createRandom } from "./random.ts";
import { effort, SIZES, type Size } from "./sizes.ts";
import { ms, printTable, times } from "./table.ts";

const MOVES = 1_000;
/** A train moves by up to this much either way. */
const MOST_MS = 300_000;

/** One train moved and the plan checked again, against checking all of it: with the report as the service does, and without. */
export function benchMoves(): void {
  const rows = SIZES.map((size) => {
    const runs = Array.from({ length: size.seeds }, (_, seed) => runSeed(size, seed + 1));
    const of = (read: (run: Run) => number) => median(runs.map(read));
    return [
      size.trains,
      `${(of((run) => run.move) * 1e3).toFixed(1)} us`,
      ms(of((run) => run.checked)),
      times(of((run) => run.checked / run.move)),
      ms(of((run) => run.swept)),
      times(of((run) => run.swept / run.move)),
    ];
  });
  printTable(["trains", "a move", "whole check, ms", "to a move", "without report, ms", "to a move"], rows);
}

type Run = ReturnType<typeof runSeed>;

function runSeed(size: Size, seed: number) {
  const problem = makePlan(seed, size.trains, size.sections);
  const recheck = createRecheck(problem);
  const moves = randomMoves(problem, seed);
  const { moved, checked, swept } = medianTimes(
    {
      moved: () => {
        for (const { train, times } of moves) recheck.move(train, times);
      },
      checked: () => check(problem),
      swept: () => sweepPlan(compilePlan(problem)),
    },
    effort(size),
  );
  return { move: moved / MOVES, checked, swept };
}

function randomMoves(problem: Problem, seed: number): { train: number; times: Times }[] {
  const random = createRandom(seed);
  return Array.from({ length: MOVES }, () => {
    const train = random.whole(0, problem.trains.length - 1);
    const by = random.whole(-MOST_MS, MOST_MS);
    return { train, times: moveBy(problem.trains[train] as Train, by) };
  });
}

function moveBy({ path, placedMs, removedMs }: Train, byMs: number): Times {
  const moved = (at: number | null) => (at === null ? null : at + byMs);
  return {
    path: path.map(({ section, arriveMs, departMs }) => ({
      section,
      arriveMs: moved(arriveMs),
      departMs: moved(departMs),
    })),
    placedMs: moved(placedMs),
    removedMs: moved(removedMs),
  };
}
