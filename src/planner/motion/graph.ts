import { callsOf, endMmOf, enterOf, type Motions, startMmOf } from "./motions.ts";

/** Where a train's head is at an instant: `mm` along the section of a path entry, 0 at its beginning. */
export interface GraphPoint {
  readonly atMs: number;
  readonly pathEntry: number;
  readonly mm: number;
}

/**
 * A train's way through time, to be joined by straight lines: where it arrives and departs, and where its head passes
 * from one section to the next (as the end of the one and the beginning of the other). In order of time; empty for a
 * train whose times run backwards.
 */
export function trainGraphPoints(motions: Motions, train: number): GraphPoint[] {
  const points: GraphPoint[] = [];
  let entry = -1;
  for (const call of callsOf(motions, train)) {
    for (; entry < call.entry; entry++) points.push(...crossing(motions, train, entry));
    const mm = call.headMm - startMmOf(motions, train, entry);
    points.push({ atMs: call.arriveMs, pathEntry: entry, mm });
    if (call.departMs > call.arriveMs) points.push({ atMs: call.departMs, pathEntry: entry, mm });
  }
  return points;
}

/** From the end of `entry` to the beginning of the next; nothing before the path begins. */
function crossing(motions: Motions, train: number, entry: number): GraphPoint[] {
  const atMs = enterOf(motions, train, entry + 1);
  if (entry < 0 || atMs === null) return [];
  const mm = endMmOf(motions, train, entry) - startMmOf(motions, train, entry);
  return [
    { atMs, pathEntry: entry, mm },
    { atMs, pathEntry: entry + 1, mm: 0 },
  ];
}
