/** A stretch of time that wants a lane of its own while it lasts; half-open, so touching is not overlapping. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * A lane for each stretch so that no two in one lane overlap, with the fewest lanes: taken in order of their start,
 * each gets the lowest free lane (interval partitioning; Kleinberg and Tardos, Algorithm Design, 2005, section 4.1).
 */
export function toLanes(stretches: readonly Stretch[]): { lanes: number[]; count: number } {
  const order = stretches
    .map((stretch, index) => ({ ...stretch, index }))
    .sort((a, b) => a.fromMs - b.fromMs || a.index - b.index);
  const lanes = new Array<number>(stretches.length).fill(0);
  const freeFrom: number[] = [];
  for (const { fromMs, toMs, index } of order) {
    const free = freeFrom.findIndex((end) => end <= fromMs);
    const lane = free < 0 ? freeFrom.length : free;
    freeFrom[lane] = toMs;
    lanes[index] = lane;
  }
  return { lanes, count: freeFrom.length };
}

/** What two stretches have in common; null where they only touch or miss each other. */
export function common(a: Stretch, b: Stretch): Stretch | null {
  const fromMs = Math.max(a.fromMs, b.fromMs);
  const toMs = Math.min(a.toMs, b.toMs);
  return fromMs < toMs ? { fromMs, toMs } : null;
}
