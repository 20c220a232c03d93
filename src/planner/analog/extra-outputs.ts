import type { Allowance } from "./allowance.ts";
import { assignOutputs } from "./assign.ts";
import { irreducibleCore } from "./core.ts";
import { type Demand, searchOrder } from "./demand.ts";

/** A demand with the sections its train covers. */
export interface PlacedDemand extends Demand {
  readonly sections: readonly number[];
}

/**
 * How to serve a group that its outputs cannot: `needed` more outputs that reach `sections`. −1: put on one of
 * them.
 */
export interface Extras {
  readonly needed: number;
  /** Sections that each extra output reaches, ascending. */
  readonly sections: readonly number[];
  /** Every demand that some proof of the group named, ascending: what could not be served. */
  readonly stuck: readonly number[];
  readonly outputs: readonly number[];
}

/**
 * The fewest extra outputs, each reaching every section of the proof's demands, with which the group is served.
 * Where even one for each such demand does not help there is a second proof elsewhere: its sections are added.
 * Must hold before: the group is impossible and `core` proves it. Null where a search used up its allowance.
 * Cost: one search for each number of extra outputs tried.
 */
export function extraOutputs(
  demands: readonly PlacedDemand[],
  core: readonly number[],
  allowance: Allowance,
): Extras | null {
  const stuck = new Set(core);
  for (;;) {
    const reach = new Set([...stuck].flatMap((index) => (demands[index] as PlacedDemand).sections));
    const helped = demands.map((demand) => demand.sections.every((section) => reach.has(section)));
    const rest = demands.flatMap((demand, index) => (helped[index] ? [] : [{ demand, index }]));
    const answer = assignOutputs(
      rest.map((entry) => entry.demand),
      allowance,
    );
    if (answer.status === "not-decided") return null;
    if (answer.status === "assigned") return fewest(demands, helped, reach, stuck, allowance);
    const next = irreducibleCore(
      rest.map((entry) => entry.demand),
      answer.reached,
      allowance,
    );
    for (const index of next.core) stuck.add((rest[index] as { index: number }).index);
  }
}

function fewest(
  demands: readonly PlacedDemand[],
  helped: readonly boolean[],
  reach: ReadonlySet<number>,
  stuck: ReadonlySet<number>,
  allowance: Allowance,
): Extras | null {
  const known = new Set(demands.flatMap((demand) => demand.candidates));
  const first = Math.max(...known) + 1;
  // as many as run at once need as many outputs, so there is no use in trying fewer
  for (let needed = Math.max(1, mostAtOnce(demands) - known.size); ; needed++) {
    const extra = Array.from({ length: needed }, (_, at) => first + at);
    const answer = assignOutputs(
      demands.map((demand, index) =>
        helped[index] ? { ...demand, candidates: [...demand.candidates, ...extra] } : demand,
      ),
      allowance,
    );
    if (answer.status === "not-decided") return null;
    if (answer.status === "impossible") continue;
    return {
      needed,
      sections: [...reach].sort((a, b) => a - b),
      stuck: [...stuck].sort((a, b) => a - b),
      outputs: answer.outputs.map((output) => (output < first ? output : -1)),
    };
  }
}

/** Most trains that need an output at one instant. */
function mostAtOnce(demands: readonly Demand[]): number {
  let most = 0;
  let open: Demand[] = [];
  for (const index of searchOrder(demands)) {
    const demand = demands[index] as Demand;
    open = open.filter(({ endMs, train }) => endMs > demand.startMs && train !== demand.train);
    open.push(demand);
    most = Math.max(most, open.length);
  }
  return most;
}
