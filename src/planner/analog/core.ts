import type { Allowance } from "./allowance.ts";
import { type Assignment, assignOutputs } from "./assign.ts";
import { overfullInstant } from "./clique.ts";
import type { Demand } from "./demand.ts";
import { searchOrder } from "./demand.ts";

/**
 * The proof that demands cannot be served: some of them that no assignment serves together and of which none can
 * be left out. Must hold before: the search (assignOutputs unless given) says `impossible` and that `reached`. First an instant with too
 * few outputs, which is the proof people grasp; else a deletion filter (leave out a block, keep it out where the
 * rest is still impossible; blocks halve down to one demand; Chinneck and Dravnieks 1991, from memory) over the
 * demands that start before the search was stuck. Positions in `demands`, ascending. Cost O(log n × core)
 * searches. Where a search uses up its allowance its block stays in, so the result still proves but might have
 * one to spare: `irreducible` is false.
 */
export function irreducibleCore<D extends Demand>(
  demands: readonly D[],
  reached: number,
  allowance: Allowance,
  search: (some: readonly D[]) => Assignment["status"] = (some) => assignOutputs(some, allowance).status,
): { core: number[]; irreducible: boolean } {
  const instant = overfullInstant(demands, allowance);
  if (instant) return { core: instant, irreducible: true };
  let core = searchOrder(demands).slice(0, reached);
  let irreducible = true;
  for (let block = Math.ceil(core.length / 2); ; block = Math.ceil(block / 2)) {
    let from = 0;
    irreducible = true;
    while (from < core.length) {
      const rest = [...core.slice(0, from), ...core.slice(from + block)];
      const answer = search(rest.map((index) => demands[index] as D));
      if (answer === "not-decided") irreducible = false;
      if (answer === "impossible") core = rest;
      else from += block;
    }
    if (block === 1) break;
  }
  return { core: core.sort((a, b) => a - b), irreducible };
}
