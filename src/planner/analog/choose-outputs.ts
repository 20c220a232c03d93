import type { Output, Problem } from "../problem.ts";
import type { AnalogReport } from "../result.ts";
import { fewestTurns } from "../selectors/fewest-turns.ts";
import { countTurns, followPairs } from "../selectors/follow-pairs.ts";
import type { SectionUses } from "../selectors/section-uses.ts";
import type { RunAssignment } from "./assign-runs.ts";
import type { OpenRun } from "./build-runs.ts";
import type { Demand } from "./demand.ts";

/** Outputs by run, and how often selectors are then turned. */
export interface Choice {
  readonly outputs: readonly number[];
  readonly turns: AnalogReport["turns"];
}

/**
 * Of the assignments that work, the one with the fewest turns of selectors. Trains keep to outputs that can carry
 * them where the given assignment does so, and what is chosen loads nothing worse (`burden`) than the given one:
 * else that one stays. Nothing is chosen where not every run has an output, or the plan wants one section for two.
 */
export function chooseOutputs(
  problem: Problem,
  runs: readonly OpenRun[],
  given: RunAssignment,
  { uses, contradictions }: SectionUses,
  burden: (outputs: readonly number[]) => number,
): Choice {
  if (given.status !== "assigned" || contradictions.length > 0)
    return { outputs: given.outputs, turns: null };
  const demands = runs.map((run, at) => toDemand(problem, run, given.outputs[at] as number));
  const found = fewestTurns(demands, followPairs(uses), given.outputs);
  const before = countTurns(uses, given.outputs);
  const made = countTurns(uses, found.outputs);
  // turns that no choice of outputs spares are in both
  const atLeast = made - (found.changes - found.atLeast);
  if (made < before && burden(found.outputs) <= burden(given.outputs))
    return { outputs: found.outputs, turns: { made, atLeast } };
  return { outputs: given.outputs, turns: { made: before, atLeast } };
}

function toDemand(problem: Problem, run: OpenRun, output: number): Demand {
  const rated = run.candidates.filter((each) => (problem.outputs[each] as Output).ratingMa >= run.runningMa);
  const candidates = rated.includes(output) ? rated : run.candidates;
  return { ...run.span, train: run.train, candidates };
}
