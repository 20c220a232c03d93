import fc from "fast-check";
import type { Problem } from "../../src/planner/problem.ts";
import { type PlanShape, randomPlan } from "./random-plan.ts";

/** The kinds of plan that every oracle sees. */
export const SHAPES = {
  digital: { controls: "digital", mostTrains: 5, mostSections: 7, outputs: 1 },
  analog: { controls: "analog", mostTrains: 4, mostSections: 6, outputs: 3 },
  mixed: { controls: "mixed", mostTrains: 4, mostSections: 7, outputs: 2 },
} as const satisfies Record<string, PlanShape>;

/** Fresh on every run, so that the plans differ; set PLAN_SEED to see the plans of a run again. */
export const PLAN_SEED = Number(process.env.PLAN_SEED ?? Date.now() % 2_147_483_647);
/** Plans of each kind that each oracle compares; PLAN_RUNS for a longer look. */
const PLAN_RUNS = Number(process.env.PLAN_RUNS ?? 250);

/** Looking for the smallest plan that fails can take minutes: only when asked to. */
const PLAN_SHRINK = process.env.PLAN_SHRINK === "1";

/** How long a busy machine may take over the plans of one claim; no claim is about time. */
export const PATIENCE_MS = 300_000;

/**
 * Holds `claim` against many random plans of every kind; prints the seed, and the plan where it fails: PLAN_SEED
 * and PLAN_SHRINK=1 then give the smallest such plan.
 */
export function forRandomPlans(title: string, claim: (problem: Problem) => void): void {
  console.log(`${title}: ${PLAN_RUNS} plans of each kind, seed ${PLAN_SEED}`);
  for (const shape of Object.values(SHAPES))
    fc.assert(fc.property(randomPlan(shape), claim), {
      seed: PLAN_SEED,
      numRuns: PLAN_RUNS,
      endOnFailure: !PLAN_SHRINK,
      reporter: (run) => {
        if (run.failed) throw failure(run.seed, run.counterexample, run.errorInstance);
      },
    });
}

/** The seed, the plan and what was wrong; not the path of the shrinking, which is longer than all of these. */
function failure(seed: number, counterexample: [Problem] | null, cause: unknown): Error {
  return new Error(`seed ${seed}, plan ${JSON.stringify(counterexample?.[0])}`, { cause });
}
