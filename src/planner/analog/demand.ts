/**
 * What the search for outputs sees of a run: when it needs one, whose it is, and which outputs would do.
 * Two demands of different trains that overlap as open intervals cannot have the same output; one train may keep
 * one output for two demands of its own (design section 6: one output drives one train).
 */
export interface Demand {
  readonly startMs: number;
  readonly endMs: number;
  readonly train: number;
  /** Outputs that would do, ascending. */
  readonly candidates: readonly number[];
}

/** Whether the two may not share an output. */
export function compete(a: Demand, b: Demand): boolean {
  return a.train !== b.train && a.startMs < b.endMs && b.startMs < a.endMs;
}

/** The order of the search: by start, end, train; ties keep their given order. Returns positions in `demands`. */
export function searchOrder(demands: readonly Demand[]): number[] {
  const order = demands.map((_, index) => index);
  const at = (index: number) => demands[index] as Demand;
  return order.sort(
    (a, b) =>
      at(a).startMs - at(b).startMs || at(a).endMs - at(b).endMs || at(a).train - at(b).train || a - b,
  );
}
