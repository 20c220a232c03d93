import { check } from "../check.ts";
import { compilePlan } from "../compile-plan.ts";
import type { Controller, Output, Problem } from "../problem.ts";
import { accessoriesMa } from "./accessories.ts";
import { findDivisions } from "./divisions.ts";

/** What running a timetable wholly analog on the same track would take. Indexes into the problem. */
export interface AnalogCost {
  /** The fewest controller outputs, each reaching every section: exact, the most runs at once. */
  readonly outputs: number;
  /** Sections each output then feeds, ascending: what its selectors must reach for this assignment. */
  readonly reach: readonly (readonly number[])[];
  /** False where not every run got an output within the limit of the search. */
  readonly isAssigned: boolean;
  /** Selector turns, and the fewest that any assignment could need; null where sections must be divided first. */
  readonly turns: { readonly made: number; readonly atLeast: number } | null;
  /** Shared sections in which different stock stands or passes together, and into how many each must be divided. */
  readonly divide: readonly { readonly section: number; readonly parts: number }[];
  /** The most that one output gives, and all of them together with the accessories. */
  readonly peakOutputMa: number;
  readonly peakTogetherMa: number;
  /** What accessories take of that all the time. */
  readonly accessoriesMa: number;
  /** Locomotives whose decoder does not run on analog track. */
  readonly unfit: readonly number[];
}

/** More than any output is asked for: ratings are what is looked for, not what is given. */
const ANY_MA = 1_000_000;

/**
 * The timetable on the same track with every section analog and every output reaching every section. The number of outputs is
 * exact: intervals need as many machines as overlap at an instant (Kleinberg and Tardos, Algorithm Design, 4.1). Cost: two
 * checks.
 */
export function costAllAnalog(problem: Problem): AnalogCost {
  const outputs = check(asAnalog(problem, 1)).analog.need.peak;
  // a timetable of no trains needs none, a railway without any could not be told to the check
  const result = check(asAnalog(problem, Math.max(1, outputs)), { mostFindings: 1_000_000 });
  const { analog } = result;
  const reach = Array.from({ length: outputs }, () => new Set<number>());
  for (const { output, sections } of analog.runs)
    if (output >= 0) for (const section of sections) reach[output]?.add(section);
  return {
    outputs,
    reach: reach.map((sections) => [...sections].sort((a, b) => a - b)),
    isAssigned: analog.status === "assigned",
    turns: analog.turns,
    divide: findDivisions(problem, compilePlan(problem).stock, result.occupations),
    peakOutputMa: Math.max(0, ...result.outputs.map(({ peakMa }) => peakMa)),
    peakTogetherMa: result.controllers[0]?.peakMa ?? 0,
    accessoriesMa: accessoriesMa(problem),
    unfit: usedLocomotives(problem).filter((at) => {
      const decoder = problem.locomotives[at]?.decoder;
      return decoder && !decoder.analogAllowed;
    }),
  };
}

function asAnalog(problem: Problem, count: number): Problem {
  const controller: Controller = { code: "all", transformerMa: ANY_MA, accessoryMa: accessoriesMa(problem) };
  const outputs = Array.from(
    { length: count },
    (_, at): Output => ({ code: `${at + 1}`, controller: 0, ratingMa: ANY_MA }),
  );
  const every = outputs.map((_, at) => at);
  return {
    ...problem,
    controllers: [controller],
    outputs,
    sections: problem.sections.map((section) => ({
      ...section,
      control: "analog",
      shared: false,
      outputs: every,
    })),
  };
}

/** Locomotives that the slot's trains have, ascending. */
export function usedLocomotives({ trains }: Problem): number[] {
  const used = new Set(trains.flatMap(({ power }) => power.map(({ locomotive }) => locomotive)));
  return [...used].sort((a, b) => a - b);
}
