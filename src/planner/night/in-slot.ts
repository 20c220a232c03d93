/** A slot on both clocks: real ms from its start to its end, the layout seconds when it starts, the clock ratio. */
export interface SlotClocks {
  readonly lengthMs: number;
  readonly layoutStartS: number;
  readonly ratio: number;
}

/** A train belongs to the slot in which it departs. Half-open; instants rounded to the ms, halves up: design section 4. */
export function departsIn({ lengthMs, layoutStartS, ratio }: SlotClocks, departS: number): boolean {
  const ms = Math.floor(((departS - layoutStartS) * 1_000) / ratio + 0.5);
  return ms >= 0 && ms < lengthMs;
}
