import type { Problem, Section, Train } from "../problem.ts";

/** One move of a train between two calls, and what it covers on the way, not rounded. */
export interface Move {
  readonly departMs: number;
  readonly arriveMs: number;
  /** Path entries of the two calls. */
  readonly fromEntry: number;
  readonly toEntry: number;
  readonly covered: readonly Covered[];
}

/** Some of the train is in the section from `fromMs` to `toMs` of the move. */
export interface Covered {
  readonly section: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * All moves of one train, worked out anew from its path: at a call the head is at the end of the section, between
 * calls the speed is steady. Empty for times that run backwards. For judging, so it shares nothing with the
 * planner's motion.
 */
export function movesOf(problem: Problem, index: number): Move[] {
  const train = problem.trains[index] as Train;
  const ends: number[] = [];
  for (const { section } of train.path)
    ends.push((ends.at(-1) ?? 0) + (problem.sections[section] as Section).lengthMm);
  const calls = train.path.flatMap(({ arriveMs, departMs }, entry) =>
    arriveMs === null && departMs === null
      ? []
      : [
          {
            entry,
            arriveMs: arriveMs ?? departMs ?? 0,
            departMs: departMs ?? arriveMs ?? 0,
            headMm: ends[entry] as number,
          },
        ],
  );
  const moves: Move[] = [];
  for (const [at, to] of calls.entries()) {
    const from = calls[at - 1];
    if (!from) continue;
    if (to.arriveMs <= from.departMs || from.departMs < from.arriveMs) return [];
    const msPerMm = (to.arriveMs - from.departMs) / (to.headMm - from.headMm);
    const covered = train.path.flatMap(({ section }, entry) => {
      const beginMm = ends[entry - 1] ?? 0;
      const entersMs = from.departMs + Math.max(0, (beginMm - from.headMm) * msPerMm);
      const leavesMs = from.departMs + ((ends[entry] as number) + train.lengthMm - from.headMm) * msPerMm;
      const toMs = Math.min(leavesMs, to.arriveMs);
      return entry <= to.entry && entersMs < toMs ? [{ section, fromMs: entersMs, toMs }] : [];
    });
    moves.push({
      departMs: from.departMs,
      arriveMs: to.arriveMs,
      fromEntry: from.entry,
      toEntry: to.entry,
      covered,
    });
  }
  return moves;
}
