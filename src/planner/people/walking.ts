/** How a club reckons walking where nobody has measured it: design section 7. */
export interface WalkingPolicy {
  /** Where no walk is stated: between any two things one does, the nearest included. */
  readonly leastMs: number;
  /** What round a room full of railway is longer than the straight line. */
  readonly detour: number;
  readonly mmPerSecond: number;
}

/** Half a minute to put one thing down and be at the next; a stroll of a metre a second. Common practice, no source. */
export const WALKING: WalkingPolicy = { leastMs: 30_000, detour: 1.4, mmPerSecond: 1_000 };

export interface Spot {
  readonly code: string;
  /** Millimetres from any corner of the room; null: not measured. */
  readonly xMm: number | null;
  readonly yMm: number | null;
}

export interface StatedWalk {
  readonly from: string;
  readonly to: string;
  readonly seconds: number;
}

/** Real ms on foot from one place to another; null: nowhere in particular. */
export type WalkTime = (from: string | null, to: string | null) => number;

/**
 * Walking times between places: as stated, however short, the way back being as long where it is not stated itself; else the
 * straight distance with its detour, and never below the least. Whole ms, rounded up. Design section 7. Building it is
 * linear, asking constant.
 */
export function createWalkTime(
  places: readonly Spot[],
  stated: readonly StatedWalk[],
  policy: WalkingPolicy = WALKING,
): WalkTime {
  const spots = new Map(places.map((place) => [place.code, place]));
  const ways = new Map<string, number>();
  for (const { from, to, seconds } of stated) ways.set(`${to} ${from}`, seconds);
  // after all ways back, so that what is stated wins
  for (const { from, to, seconds } of stated) ways.set(`${from} ${to}`, seconds);
  return (from, to) => {
    if (from === null || to === null || from === to) return policy.leastMs;
    const stated = ways.get(`${from} ${to}`);
    if (stated !== undefined) return Math.ceil(stated * 1_000);
    const seconds = straightSeconds(spots.get(from), spots.get(to), policy);
    return Math.max(policy.leastMs, Math.ceil(seconds * 1_000));
  };
}

function straightSeconds(a: Spot | undefined, b: Spot | undefined, policy: WalkingPolicy): number {
  if (!a || !b || a.xMm === null || a.yMm === null || b.xMm === null || b.yMm === null) return 0;
  return (Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) * policy.detour) / policy.mmPerSecond;
}
