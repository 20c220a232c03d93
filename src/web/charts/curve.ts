import type { TimeWindow } from "./ticks.ts";

/** Steps [from, value]: each holds until the next; 0 before the first. */
export type Curve = readonly (readonly [fromMs: number, value: number])[];

/** Index of the last entry at or before `ms`; −1 where all come after it. Entries are in order of their instant. */
export function lastAtOrBefore(entries: readonly (readonly [number, number])[], ms: number): number {
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const entry = entries[middle];
    if (entry && entry[0] <= ms) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** The value that holds at `ms`. */
export function valueAt(curve: Curve, ms: number): number {
  return curve[lastAtOrBefore(curve, ms)]?.[1] ?? 0;
}

/** The steps inside the window, from its start with what holds there to its end: 1 or more, in order. */
export function cutToWindow(curve: Curve, window: TimeWindow): [number, number][] {
  const cut: [number, number][] = [[window.fromMs, valueAt(curve, window.fromMs)]];
  for (let i = lastAtOrBefore(curve, window.fromMs) + 1; i < curve.length; i++) {
    const step = curve[i];
    if (!step || step[0] >= window.toMs) break;
    cut.push([step[0], step[1]]);
  }
  return cut;
}

/**
 * Where a point moves in straight lines between its bends: where it is at `ms`; null before the first and after the
 * last.
 */
export function positionAt(points: readonly (readonly [number, number])[], ms: number): number | null {
  const i = lastAtOrBefore(points, ms);
  const from = points[i];
  if (!from) return null;
  const to = points[i + 1];
  if (!to) return from[0] === ms ? from[1] : null;
  return from[1] + ((to[1] - from[1]) * (ms - from[0])) / (to[0] - from[0]);
}
