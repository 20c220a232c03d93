import type { SectionUse } from "./section-uses.ts";

/** Run `later` comes next after `earlier` in so many sections with nothing in between that must be off. */
export interface FollowPair {
  readonly earlier: number;
  readonly later: number;
  /** Selectors that need not be turned between the two if they have the same output. */
  readonly sections: number;
}

/** All such pairs of different runs, by the two. Cost: linear in uses, and sorting the pairs. */
export function followPairs(uses: ReadonlyMap<number, readonly SectionUse[]>): FollowPair[] {
  const sections = new Map<string, FollowPair>();
  for (const here of uses.values())
    for (const [at, { run: later }] of here.entries()) {
      const earlier = here[at - 1]?.run ?? -1;
      if (earlier < 0 || later < 0 || earlier === later) continue;
      const key = `${earlier} ${later}`;
      sections.set(key, { earlier, later, sections: (sections.get(key)?.sections ?? 0) + 1 });
    }
  return [...sections.values()].sort((a, b) => a.earlier - b.earlier || a.later - b.later);
}

/**
 * Times that a selector is turned where run i has output `outputs[i]`: every change of a selector's position counts
 * one, and all stand off at the beginning. Cost: linear in uses.
 */
export function countTurns(
  uses: ReadonlyMap<number, readonly SectionUse[]>,
  outputs: readonly number[],
): number {
  let turns = 0;
  for (const here of uses.values()) {
    let position = -1;
    for (const { run } of here) {
      const next = run < 0 ? -1 : (outputs[run] as number);
      if (next !== position) turns++;
      position = next;
    }
  }
  return turns;
}
