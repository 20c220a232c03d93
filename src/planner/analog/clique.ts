import type { Allowance } from "./allowance.ts";
import { type Demand, searchOrder } from "./demand.ts";

/** Demands to look at, in search order, and which outputs each may still have. */
export interface Outlook {
  readonly demands: readonly Demand[];
  readonly order: readonly number[];
  /** Position in `order` to look from, and the start before which to look. */
  readonly from: number;
  readonly beforeMs: number;
  /** Whether an output is still held by another when the demand starts. */
  readonly barred: (output: number, demand: Demand) => boolean;
  readonly allowance: Allowance;
}

/** Demands that have too few outputs between them, and how far into the order the last of them is. */
export interface Overfull {
  readonly demands: number[];
  readonly lastAt: number;
}

/**
 * Looks for an instant at which the demands then open have too few outputs between them: a maximum matching by
 * augmenting paths at each start, and where one demand stays unmatched, the demands that an alternating path
 * reaches from it. They are one more than the outputs they may have between them, and without any one of them
 * they match (Hall 1935; Kuhn's augmenting paths; from memory), so they are an irreducible proof. Positions in
 * `demands`; null where every instant matches, and where the allowance is used up before. Demands of one train
 * count once: they may share. Cost O(n × open²).
 */
export function overfull({ demands, order, from, beforeMs, barred, allowance }: Outlook): Overfull | null {
  const holder = new Map<number, number>();
  let open: number[] = [];
  for (let at = from; at < order.length; at++) {
    const index = order[at] as number;
    const demand = demands[index] as Demand;
    if (demand.startMs >= beforeMs || allowance.looks < 0) break;
    allowance.looks -= open.length;
    const stillOpen = open.filter((other) => (demands[other] as Demand).endMs > demand.startMs);
    if (stillOpen.length < open.length)
      for (const [output, other] of holder) if (!stillOpen.includes(other)) holder.delete(output);
    open = stillOpen;
    if (open.some((other) => (demands[other] as Demand).train === demand.train)) continue;
    const reached = new Set([index]);
    if (!augment({ demands, barred, allowance, holder, seen: new Set(), reached }, index))
      return { demands: [...reached], lastAt: at + 1 };
    open.push(index);
  }
  return null;
}

/** Over all demands, with every output free: ascending positions. */
export function overfullInstant(demands: readonly Demand[], allowance: Allowance): number[] | null {
  const order = searchOrder(demands);
  const beforeMs = Number.POSITIVE_INFINITY;
  return (
    overfull({ demands, order, from: 0, beforeMs, barred: () => false, allowance })?.demands.sort(
      (a, b) => a - b,
    ) ?? null
  );
}

interface Matching extends Pick<Outlook, "demands" | "barred" | "allowance"> {
  /** Demand that an output is matched with. */
  readonly holder: Map<number, number>;
  readonly seen: Set<number>;
  readonly reached: Set<number>;
}

/** Finds `index` an output by moving others to another of theirs; collects in `reached` whom it tried to move. */
function augment(matching: Matching, index: number): boolean {
  const { demands, barred, allowance, holder, seen, reached } = matching;
  const demand = demands[index] as Demand;
  allowance.looks -= demand.candidates.length;
  for (const output of demand.candidates) {
    if (seen.has(output) || barred(output, demand)) continue;
    seen.add(output);
    const other = holder.get(output);
    if (other !== undefined) reached.add(other);
    if (other === undefined || augment(matching, other)) {
      holder.set(output, index);
      return true;
    }
  }
  return false;
}
