import type { Interval } from "../problem.ts";

/**
 * Step functions put together roughly, never too low: each row lifts its key's function by `height` in every slice of
 * time that it touches. Only the first `count` rows hold.
 */
export interface RoughSteps {
  readonly slices: Slices;
  count: number;
  key: Int32Array;
  /** Both included. */
  firstSlice: Int32Array;
  lastSlice: Int32Array;
  height: Int32Array;
}

/** `count` slices, `perMs` to one ms, from `startMs` on; what is outside counts with the first or last. */
export interface Slices {
  readonly startMs: number;
  readonly count: number;
  readonly perMs: number;
}

/** Slices so many that all keys' together are about `rows`. */
export function cutSlices(span: Interval, keys: number, rows: number): Slices {
  const count = 8 + Math.ceil(rows / Math.max(1, keys));
  return { startMs: span.startMs, count, perMs: count / Math.max(1, span.endMs - span.startMs) };
}

export function createRoughSteps(slices: Slices, capacity: number): RoughSteps {
  return {
    slices,
    count: 0,
    key: new Int32Array(capacity),
    firstSlice: new Int32Array(capacity),
    lastSlice: new Int32Array(capacity),
    height: new Int32Array(capacity),
  };
}

/** Appends one row. Before: there is room for it. */
export function putRough(rough: RoughSteps, key: number, fromMs: number, toMs: number, height: number): void {
  const { startMs, count, perMs } = rough.slices;
  const at = rough.count++;
  rough.key[at] = key;
  rough.firstSlice[at] = sliceAt((fromMs - startMs) * perMs, count);
  rough.lastSlice[at] = sliceAt((toMs - startMs) * perMs, count);
  rough.height[at] = height;
}

/** Which of the slices an instant counts with only has to keep the order of instants. */
function sliceAt(place: number, count: number): number {
  const slice = place | 0;
  if (slice < 0) return 0;
  return slice < count ? slice : count - 1;
}

/** Makes room for that many more. */
export function reserveRough(rough: RoughSteps, more: number): void {
  if (rough.count + more <= rough.key.length) return;
  const capacity = 2 * rough.key.length + more;
  rough.key = enlarged(rough.key, capacity);
  rough.firstSlice = enlarged(rough.firstSlice, capacity);
  rough.lastSlice = enlarged(rough.lastSlice, capacity);
  rough.height = enlarged(rough.height, capacity);
}

function enlarged(from: Int32Array, capacity: number): Int32Array {
  const to = new Int32Array(capacity);
  to.set(from);
  return to;
}
