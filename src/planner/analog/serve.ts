import type { Allowance } from "./allowance.ts";
import { type Assignment, assignOutputs } from "./assign.ts";
import { irreducibleCore } from "./core.ts";
import { type Extras, extraOutputs, type PlacedDemand } from "./extra-outputs.ts";

/** A demand with what its train draws; `rated` are the candidates that can carry that. */
export interface RatedDemand extends PlacedDemand {
  readonly rated: readonly number[];
}

/** What became of a group of demands. `outputs` names −1 where a demand got none. */
export interface Service {
  readonly status: "assigned" | "impossible" | "not-decided";
  readonly outputs: readonly number[];
  /** Where impossible: the irreducible proof, positions in the group. */
  readonly core: readonly number[];
  /** Where impossible and found within the limit. */
  readonly extras: Extras | null;
}

/**
 * Serves one group: first only with outputs that can carry each train (a train too heavy for all keeps them all),
 * then with any that reach, and where that is impossible with the proof and the fewest extra outputs. Exact
 * unless a search uses up its allowance.
 */
export function serve(group: readonly RatedDemand[], allowance: Allowance): Service {
  const within = assignOutputs(
    group.map((demand) => (demand.rated.length > 0 ? { ...demand, candidates: demand.rated } : demand)),
    allowance,
  );
  if (within.status === "assigned") return assigned(within.outputs);
  const any: Assignment = assignOutputs(group, allowance);
  const none = group.map(() => -1);
  if (any.status === "not-decided") return { status: any.status, outputs: none, core: [], extras: null };
  if (any.status === "assigned") {
    // an assignment within the ratings may exist that the first search did not reach
    if (within.status === "not-decided")
      return { status: "not-decided", outputs: any.outputs, core: [], extras: null };
    return assigned(any.outputs);
  }
  const { core } = irreducibleCore(group, any.reached, allowance);
  const extras = extraOutputs(group, core, allowance);
  const outputs = extras?.outputs ?? withoutStuck(group, allowance);
  return { status: "impossible", outputs, core, extras };
}

/**
 * Serves what is left when the last demand of one proof after the other goes without: not the most that could be.
 */
function withoutStuck(group: readonly RatedDemand[], allowance: Allowance): number[] {
  let kept = group.map((_, index) => index);
  for (;;) {
    const demands = kept.map((index) => group[index] as RatedDemand);
    const answer = assignOutputs(demands, allowance);
    const outputs = group.map(() => -1);
    if (answer.status === "assigned")
      for (const [at, index] of kept.entries()) outputs[index] = answer.outputs[at] as number;
    if (answer.status !== "impossible") return outputs;
    const last = irreducibleCore(demands, answer.reached, allowance).core.at(-1);
    kept = kept.filter((_, at) => at !== last);
  }
}

function assigned(outputs: readonly number[]): Service {
  return { status: "assigned", outputs, core: [], extras: null };
}
