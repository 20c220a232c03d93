import { expect, test } from "vitest";
import { compilePlan } from "../../src/planner/compile-plan.ts";
import type { Problem } from "../../src/planner/problem.ts";
import type { AnalogRun } from "../../src/planner/result.ts";
import { makeSchedule } from "../../src/planner/selectors/make-schedule.ts";
import { sweepPlan } from "../../src/planner/sweep.ts";
import { judgeSchedule } from "../../src/planner/verify/judge-schedule.ts";
import { occupations } from "./occupation.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

/** Findings of these kinds say that the plan itself wants something of the track that no panel can give. */
const OF_TRACK = /^(path|section|stock|train|shared|output)/;
/** Assignments that one plan may have for all of them to be tried. */
const MOST_WAYS = 3_000;

test("every schedule stands before a judge who runs the trains over the panel", {
  timeout: PATIENCE_MS,
}, () => {
  let judged = 0;
  forRandomPlans("schedules", (problem) => {
    const plan = compilePlan(problem);
    const { analog, findings } = sweepPlan(plan);
    const answer = makeSchedule(plan, analog.report);
    const isAtFault = findings.some(({ code, severity }) => severity === "stops" && OF_TRACK.test(code));
    // only a plan that is stopped for it has none
    if (answer.status !== "made") {
      expect(isAtFault).toBe(true);
      return;
    }
    const turns = answer.schedule.turns;
    expect(analog.report.turns?.made).toBe(turns.length);
    if (isAtFault) return;
    expect(judgeSchedule(problem, turns)).toEqual([]);
    if (turns.length === 0) return;
    judged++;
    // made at either end of the time it may be made in, one turn feeds nobody wrongly who moves
    const one = turns[judged % turns.length];
    for (const atMs of [one?.mayMs.startMs ?? 0, one?.mayMs.endMs ?? 0]) {
      const moved = turns.map((turn) => (turn === one ? { ...turn, atMs } : turn));
      const faults = judgeSchedule(problem, moved).map(({ kind }) => kind);
      expect(faults.filter((kind) => kind !== "parked-stock-fed" && kind !== "turned-twice-at-once")).toEqual(
        [],
      );
    }
  });
  expect(judged).toBeGreaterThan(20);
});

test("no way of giving out the outputs has fewer turns: all are tried, each turn counted millisecond by millisecond", {
  timeout: PATIENCE_MS,
}, () => {
  let compared = 0;
  let better = 0;
  forRandomPlans("fewest turns", (given) => {
    const problem = withAmpleOutputs(given);
    const plan = compilePlan(problem);
    const { analog, findings } = sweepPlan(plan);
    const { report } = analog;
    // where stock is in two trains, or starts where it is not, what stands where has no answer
    if (findings.some(({ code }) => code === "stock-in-two-trains" || code === "stock-elsewhere")) return;
    if (report.status !== "assigned" || report.runs.length === 0 || report.turns === null) return;
    if (report.runs.reduce((ways, { candidates }) => ways * candidates.length, 1) > MOST_WAYS) return;
    const wanted = wantedPositions(problem, report.runs);
    const counts = waysToServe(report.runs).map((outputs) => turnsOf(wanted, outputs));
    const chosen = turnsOf(
      wanted,
      report.runs.map(({ output }) => output),
    );
    expect(report.turns).toEqual({ made: Math.min(...counts), atLeast: Math.min(...counts) });
    expect(chosen).toBe(report.turns.made);
    compared++;
    if (Math.max(...counts) > chosen) better++;
  });
  expect(compared).toBeGreaterThan(50);
  expect(better).toBeGreaterThan(5);
});

/** So that every assignment overloads nothing. */
function withAmpleOutputs(problem: Problem): Problem {
  return {
    ...problem,
    controllers: problem.controllers.map((each) => ({ ...each, transformerMa: 1_000_000 })),
    outputs: problem.outputs.map((each) => ({ ...each, ratingMa: 100_000 })),
  };
}

/** For each section the runs that feed it, −1: off, as one follows the other. */
function wantedPositions(problem: Problem, runs: readonly AnalogRun[]): number[][] {
  // where a section can be either, set-up and release of a digital train keep it off too
  const present = occupations(problem).map(({ section, enterMs, clearMs, blocked }) => ({
    section,
    fromMs: enterMs === null || isEither(section) ? blocked.startMs : enterMs,
    toMs: clearMs === null || isEither(section) ? blocked.endMs : clearMs,
  }));
  const endMs = Math.max(...present.map(({ toMs }) => toMs), ...runs.map(({ span }) => span.endMs));
  return problem.sections.map(({ control }, section) => {
    if (control !== "analog" && control !== "changeover") return [];
    const fed = runs.flatMap((run, at) =>
      run.sectionSpans.flatMap((span, i) => (run.sections[i] === section ? [{ at, ...span }] : [])),
    );
    const here = present.filter((stay) => stay.section === section);
    const order: number[] = [];
    for (let ms = -150; ms < endMs; ms++) {
      const run = fed.find(({ startMs, endMs }) => startMs <= ms && ms < endMs);
      const stands = here.some(({ fromMs, toMs }) => fromMs <= ms && ms < toMs);
      const position = run ? run.at : stands ? -1 : null;
      if (position !== null && position !== order.at(-1)) order.push(position);
    }
    return order;
  });

  function isEither(section: number): boolean {
    return problem.sections[section]?.control === "changeover";
  }
}

function turnsOf(wanted: readonly number[][], outputs: readonly number[]): number {
  return wanted.reduce((turns, order) => {
    const positions = order.map((run) => (run < 0 ? -1 : (outputs[run] as number)));
    return turns + positions.filter((position, at) => position !== (positions[at - 1] ?? -1)).length;
  }, 0);
}

/** All assignments in which no output drives two trains at once. */
function waysToServe(runs: readonly AnalogRun[]): number[][] {
  let ways: number[][] = [[]];
  for (const [at, run] of runs.entries())
    ways = ways.flatMap((way) =>
      run.candidates
        .filter(
          (output) =>
            !runs
              .slice(0, at)
              .some(
                (other, before) =>
                  way[before] === output &&
                  other.train !== run.train &&
                  other.span.startMs < run.span.endMs &&
                  run.span.startMs < other.span.endMs,
              ),
        )
        .map((output) => [...way, output]),
    );
  return ways;
}
