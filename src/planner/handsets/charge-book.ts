import type { HandsetDemand } from "./handset-demands.ts";

/** How long each handset lasts, ms; null: fed by its cable. */
export type Charges = readonly (number | null)[];

/** A handset as the past of the evening leaves it. */
export interface Held {
  readonly freeAtMs: number;
  /** Its first pick-up; infinite: still in its drawer. */
  readonly firstMs: number;
}

export const IN_DRAWER: Held = {
  freeAtMs: Number.NEGATIVE_INFINITY,
  firstMs: Number.POSITIVE_INFINITY,
};

/** What is known of the handsets before anything is shared out. */
export interface ChargeBook {
  readonly handsets: readonly number[];
  /** Whether somebody has it for some train already. */
  isClaimed(handset: number): boolean;
  /** How many demands it would do for. */
  wanted(handset: number): number;
  /**
   * Whether it can be given: free, in nobody's hands by claim, and charged from its first pick-up to its last hand-in. What
   * is claimed is never refused.
   */
  isToBeHad(handset: number, demand: HandsetDemand, held: Held): boolean;
  /** When its charge ends if it is given. */
  flatAtMs(handset: number, demand: HandsetDemand, held: Held): number;
}

export function createChargeBook(demands: readonly HandsetDemand[], charges: Charges): ChargeBook {
  const wanted = new Map<number, number>();
  const claims = new Map<number, HandsetDemand[]>();
  for (const demand of demands) {
    for (const handset of demand.candidates) wanted.set(handset, (wanted.get(handset) ?? 0) + 1);
    if (!demand.isClaimed) continue;
    const handset = demand.candidates[0] as number;
    claims.set(handset, [...(claims.get(handset) ?? []), demand]);
  }
  const lasts = (handset: number) => charges[handset] ?? Number.POSITIVE_INFINITY;
  return {
    handsets: [...wanted.keys()].sort((a, b) => a - b),
    isClaimed: (handset) => claims.has(handset),
    wanted: (handset) => wanted.get(handset) ?? 0,
    isToBeHad(handset, demand, { freeAtMs, firstMs }) {
      if (demand.isClaimed) return true;
      if (freeAtMs > demand.startMs) return false;
      const others = claims.get(handset) ?? [];
      if (others.some((one) => one.startMs < demand.endMs && demand.startMs < one.endMs)) return false;
      const fromMs = Math.min(firstMs, demand.startMs, ...others.map(({ startMs }) => startMs));
      const untilMs = Math.max(demand.endMs, ...others.map(({ endMs }) => endMs));
      return untilMs - fromMs <= lasts(handset);
    },
    flatAtMs: (handset, demand, { firstMs }) => Math.min(firstMs, demand.startMs) + lasts(handset),
  };
}
