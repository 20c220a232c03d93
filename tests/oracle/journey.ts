import type { Problem, Train } from "../../src/planner/problem.ts";

/**
 * Where a train's head is, by the definition of its motion: still until its departure, steady between two timed
 * points, still after its arrival. Slow and obvious; knows nothing of the planner. Instants are asked for in the
 * middle of a millisecond, as odd half-milliseconds, so that no question ever falls on a timed point.
 */
export interface Journey {
  readonly train: Train;
  readonly startMs: number;
  readonly endMs: number;
  /** Where section `entry` of the path begins and ends, mm from the path's start. */
  readonly begins: readonly number[];
  readonly ends: readonly number[];
  readonly stops: readonly Stop[];
}

export interface Stop {
  readonly entry: number;
  readonly arriveMs: number;
  readonly departMs: number;
  readonly atMm: number;
}

export function journey(problem: Problem, train: Train): Journey {
  const begins: number[] = [];
  const ends: number[] = [];
  let mm = 0;
  for (const { section } of train.path) {
    begins.push(mm);
    mm += problem.sections[section]?.lengthMm ?? 0;
    ends.push(mm);
  }
  const stops: Stop[] = [];
  for (const [entry, { arriveMs, departMs }] of train.path.entries()) {
    if (arriveMs === null && departMs === null) continue;
    const first = entry === 0;
    const last = entry === train.path.length - 1;
    stops.push({
      entry,
      arriveMs: first ? Number.NEGATIVE_INFINITY : (arriveMs ?? (departMs as number)),
      departMs: last ? Number.POSITIVE_INFINITY : (departMs ?? (arriveMs as number)),
      atMm: ends[entry] as number,
    });
  }
  const startMs = train.path[0]?.departMs as number;
  const endMs = train.path.at(-1)?.arriveMs as number;
  return { train, startMs, endMs, begins, ends, stops };
}

/** Times that run backwards, or a move that takes no time: no motion is defined. */
export function runsBackwards(train: Train): boolean {
  const timed = train.path.flatMap(({ arriveMs, departMs }) =>
    arriveMs === null && departMs === null
      ? []
      : [{ arriveMs: arriveMs ?? departMs ?? 0, departMs: departMs ?? arriveMs ?? 0 }],
  );
  return timed.some(
    (stop, at) =>
      (at > 0 && at < timed.length - 1 && stop.departMs < stop.arriveMs) ||
      (at > 0 && stop.arriveMs <= (timed[at - 1]?.departMs ?? 0)),
  );
}

/**
 * Whether the head is beyond (1), at (0) or short of (−1) a point of the path in the middle of millisecond `ms`.
 */
export function compareHead(journey: Journey, ms: number, pointMm: number): -1 | 0 | 1 {
  const half = 2 * ms + 1;
  for (const [at, stop] of journey.stops.entries()) {
    if (half > 2 * stop.arriveMs && half < 2 * stop.departMs) return sign(stop.atMm - pointMm);
    const next = journey.stops[at + 1];
    if (!next || half < 2 * stop.departMs || half > 2 * next.arriveMs) continue;
    const gone = (half - 2 * stop.departMs) * (next.atMm - stop.atMm);
    const asked = (pointMm - stop.atMm) * 2 * (next.arriveMs - stop.departMs);
    return sign(gone - asked);
  }
  throw new Error("no motion at that instant");
}

export function moving(journey: Journey, ms: number): boolean {
  return !journey.stops.some((stop) => stop.arriveMs <= ms && ms < stop.departMs);
}

/** The ms to which the last instant with the head at the point is rounded, halves up; null if it never goes on. */
export function leavesPoint(journey: Journey, pointMm: number): number | null {
  for (let ms = journey.startMs - 1; ms <= journey.endMs; ms++)
    if (compareHead(journey, ms, pointMm) > 0) return ms;
  return null;
}

/**
 * The ms to which the first instant with the head at the point is rounded, halves up; null if it never gets
 * there.
 */
export function reachesPoint(journey: Journey, pointMm: number): number | null {
  for (let ms = journey.startMs - 1; ms <= journey.endMs; ms++) {
    const side = compareHead(journey, ms, pointMm);
    // exactly there in the middle of a ms: arrived before if it stands, else just now, which rounds up
    if (side > 0 || (side === 0 && !moving(journey, ms))) return ms;
  }
  return null;
}

function sign(value: number): -1 | 0 | 1 {
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}
