import { type Demand, searchOrder } from "./demand.ts";

/**
 * Looks for an instant at which the demands then open have too few outputs between them: a maximum matching by
 * augmenting paths at each start, and where one demand stays unmatched, the demands that an alternating path reaches
 * from it. They are one more than the outputs they can take between them, and without any one of them they match
 * (Hall 1935; Kuhn's augmenting paths; from memory), so they are an irreducible proof. Positions in `demands`,
 * ascending; null where every instant matches. Demands of one train count once: they may share. Cost O(n × open²).
 */
export function overfullInstant(demands: readonly Demand[]): number[] | null {
  const holder = new Map<number, number>();
  let open: number[] = [];
  for (const index of searchOrder(demands)) {
    const demand = demands[index] as Demand;
    const stillOpen = open.filter((other) => (demands[other] as Demand).endMs > demand.startMs);
    for (const [output, other] of holder) if (!stillOpen.includes(other)) holder.delete(output);
    open = stillOpen;
    if (open.some((other) => (demands[other] as Demand).train === demand.train)) continue;
    const reached = new Set([index]);
    if (!augment(demands, holder, index, new Set(), reached)) return [...reached].sort((a, b) => a - b);
    open.push(index);
  }
  return null;
}

/** Finds `index` an output by moving others to another of theirs; collects in `reached` whom it tried to move. */
function augment(
  demands: readonly Demand[],
  holder: Map<number, number>,
  index: number,
  seen: Set<number>,
  reached: Set<number>,
): boolean {
  for (const output of (demands[index] as Demand).candidates) {
    if (seen.has(output)) continue;
    seen.add(output);
    const other = holder.get(output);
    if (other !== undefined) reached.add(other);
    if (other === undefined || augment(demands, holder, other, seen, reached)) {
      holder.set(output, index);
      return true;
    }
  }
  return false;
}
