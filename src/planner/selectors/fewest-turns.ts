import { conflictGroups } from "../analog/conflict-groups.ts";
import { type Demand, searchOrder } from "../analog/demand.ts";
import type { FollowPair } from "./follow-pairs.ts";
import { searchGroup, type Thrift } from "./search-group.ts";

/**
 * Points that one search keeps over all its runs: a tenth of a second for a thousand runs on a plain machine. An
 * evening on a branch needs a tenth of them.
 */
export const MOST_POINTS = 10_000;

/**
 * The assignment with the fewest changes of output between runs that follow each other in a section (`pairs`), given
 * one that works. Dynamic programme over the demands in order of their start: all that the past leaves behind is the
 * outputs of demands still open or not yet followed, and outputs that the rest cannot tell apart are one. Before each
 * demand only the best points are kept, `mostPoints` shared out evenly over the demands; `atLeast` counts what was
 * let go. The idea is beam search with a bound (Pinedo, Scheduling; from memory). Groups that neither compete nor
 * follow are searched one by one. Cost O(mostPoints × outputs). Same input, same answer.
 */
export function fewestTurns(
  demands: readonly Demand[],
  pairs: readonly FollowPair[],
  given: readonly number[],
  mostPoints: number = MOST_POINTS,
): Thrift {
  const outputs = [...given];
  let changes = 0;
  let atLeast = 0;
  const share = Math.max(4, Math.floor(mostPoints / Math.max(1, demands.length)));
  for (const group of groupsOf(demands, pairs)) {
    const at = new Map(group.map((index, position) => [index, position]));
    const inside = pairs.flatMap(({ earlier, later, sections }) => {
      const [a, b] = [at.get(earlier), at.get(later)];
      return a === undefined || b === undefined ? [] : [{ earlier: a, later: b, sections }];
    });
    const ours = group.map((index) => demands[index] as Demand);
    const now = group.map((index) => given[index] as number);
    const answer = searchGroup(ours, inside, now, share);
    for (const [position, index] of group.entries()) outputs[index] = answer.outputs[position] as number;
    changes += answer.changes;
    atLeast += answer.atLeast;
  }
  return { outputs, changes, atLeast };
}

/** Demands that neither compete nor follow each other stand in different groups; each in search order. */
function groupsOf(demands: readonly Demand[], pairs: readonly FollowPair[]): number[][] {
  const competing = conflictGroups(demands);
  const groupOf = new Map(competing.flatMap((group, name) => group.map((index) => [index, name] as const)));
  const parent = competing.map((_, name) => name);
  const root = (name: number): number => {
    let at = name;
    while (parent[at] !== at) at = parent[at] as number;
    return at;
  };
  for (const { earlier, later } of pairs)
    parent[root(groupOf.get(later) as number)] = root(groupOf.get(earlier) as number);
  const groups = new Map<number, number[]>();
  for (const index of searchOrder(demands)) {
    const name = root(groupOf.get(index) as number);
    const group = groups.get(name);
    if (group) group.push(index);
    else groups.set(name, [index]);
  }
  return [...groups.values()];
}
