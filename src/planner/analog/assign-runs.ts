import type { Output, Problem } from "../problem.ts";
import type { AnalogReport } from "../result.ts";
import type { Allowance } from "./allowance.ts";
import type { OpenRun } from "./build-runs.ts";
import { conflictGroups } from "./conflict-groups.ts";
import { type RatedDemand, type Service, serve } from "./serve.ts";

/** What became of all runs. Positions of runs in the list given. */
export interface RunAssignment {
  readonly status: AnalogReport["status"];
  /** −1: none left, or none reaches. */
  readonly outputs: readonly number[];
  readonly core: readonly number[];
  /** Runs that no output reaches. */
  readonly unreached: readonly number[];
  /** Groups that are not served, by their first run. */
  readonly unserved: readonly UnservedGroup[];
}

export interface UnservedGroup {
  readonly runs: readonly number[];
  readonly service: Service;
}

/**
 * Gives every run an output or proves that this is impossible: each group of runs that can disturb each other on
 * its own, exactly (serve). A run that no output reaches is out of the search; it alone is then a proof.
 */
export function assignRuns(problem: Problem, runs: readonly OpenRun[], allowance: Allowance): RunAssignment {
  const demands = runs.map((run) => toDemand(problem, run));
  const outputs: number[] = runs.map(() => -1);
  const reached = demands.flatMap(({ candidates }, index) => (candidates.length > 0 ? [index] : []));
  const unreached = demands.flatMap(({ candidates }, index) => (candidates.length > 0 ? [] : [index]));
  const unserved: UnservedGroup[] = [];
  for (const group of conflictGroups(reached.map((index) => demands[index] as RatedDemand))) {
    const members = group.map((at) => reached[at] as number).sort((a, b) => a - b);
    const service = serve(
      members.map((index) => demands[index] as RatedDemand),
      allowance,
    );
    for (const [at, index] of members.entries()) outputs[index] = service.outputs[at] as number;
    if (service.status !== "assigned") unserved.push({ runs: members, service });
  }
  const proven = unserved.find(({ service }) => service.status === "impossible");
  const core = proven ? proven.service.core.map((at) => proven.runs[at] as number) : unreached.slice(0, 1);
  const status = core.length > 0 ? "impossible" : unserved.length > 0 ? "not-decided" : "assigned";
  return { status, outputs, core, unreached, unserved };
}

function toDemand(problem: Problem, run: OpenRun): RatedDemand {
  return {
    ...run.span,
    train: run.train,
    candidates: run.candidates,
    rated: run.candidates.filter((output) => (problem.outputs[output] as Output).ratingMa >= run.runningMa),
    sections: run.sections,
  };
}
