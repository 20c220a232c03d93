import { type Demand, searchOrder } from "./demand.ts";

/**
 * Splits demands into groups that cannot disturb each other: two are in one group where a chain of overlaps in
 * time with an output in common joins them. Positions in `demands`, each group ascending in search order, groups
 * by their first demand. Cost: for each output, sorting its demands; near linear.
 */
export function conflictGroups(demands: readonly Demand[]): number[][] {
  const order = searchOrder(demands);
  const parent = demands.map((_, index) => index);
  const root = (index: number): number => {
    let at = index;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  // sweeping in order of start, a demand touches the busiest stretch of each of its outputs if it starts inside it
  const stretch = new Map<number, { last: number; endMs: number }>();
  for (const index of order) {
    const { startMs, endMs, candidates } = demands[index] as Demand;
    for (const output of candidates) {
      const busy = stretch.get(output);
      if (busy && startMs < busy.endMs) parent[root(index)] = root(busy.last);
      stretch.set(output, { last: index, endMs: Math.max(endMs, busy?.endMs ?? endMs) });
    }
  }
  const groups = new Map<number, number[]>();
  for (const index of order) {
    const key = root(index);
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  }
  return [...groups.values()];
}
