/** A stretch of time that wants a lane of its own while it lasts; half-open, so touching is not overlapping. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Where a stretch is drawn: its lane, and how many lanes it and what it overlaps, directly or by others, share. */
export interface Lane {
  readonly lane: number;
  readonly of: number;
}

/**
 * A lane for each stretch so that no two in one lane overlap, with the fewest lanes: taken in order of their start,
 * each gets the lowest free lane (interval partitioning; Kleinberg and Tardos, Algorithm Design, 2005, section 4.1).
 * A stretch that overlaps no other has the only lane.
 */
export function toLanes(stretches: readonly Stretch[]): Lane[] {
  const order = stretches
    .map((stretch, index) => ({ ...stretch, index }))
    .sort((a, b) => a.fromMs - b.fromMs || a.index - b.index);
  const lanes: Lane[] = [];
  let chain: { index: number; lane: number }[] = [];
  let freeFrom: number[] = [];
  const closeChain = () => {
    for (const { index, lane } of chain) lanes[index] = { lane, of: freeFrom.length };
    chain = [];
    freeFrom = [];
  };
  for (const { fromMs, toMs, index } of order) {
    if (freeFrom.every((end) => end <= fromMs)) closeChain();
    const free = freeFrom.findIndex((end) => end <= fromMs);
    const lane = free < 0 ? freeFrom.length : free;
    freeFrom[lane] = toMs;
    chain.push({ index, lane });
  }
  closeChain();
  return lanes;
}

/** What two stretches have in common; null where they only touch or miss each other. */
export function common(a: Stretch, b: Stretch): Stretch | null {
  const fromMs = Math.max(a.fromMs, b.fromMs);
  const toMs = Math.min(a.toMs, b.toMs);
  return fromMs < toMs ? { fromMs, toMs } : null;
}
