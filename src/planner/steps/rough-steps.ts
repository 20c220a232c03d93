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

/** `count` slices of `lengthMs` from `startMs` on; what is outside counts with the first or last. */
export interface Slices {
  readonly startMs: number;
  readonly count: number;
  readonly lengthMs: number;
}

/** Slices so many that all keys' together are about `rows`. */
export function cutSlices(span: Interval, keys: number, rows: number): Slices {
  const count = 8 + Math.ceil(rows / Math.max(1, keys));
  return { startMs: span.startMs, count, lengthMs: Math.max(1, (span.endMs - span.startMs) / count) };
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
  const { startMs, count, lengthMs } = rough.slices;
  const at = rough.count++;
  const first = Math.max(0, Math.floor((fromMs - startMs) / lengthMs));
  const last = Math.max(0, Math.floor((toMs - startMs) / lengthMs));
  rough.key[at] = key;
  rough.firstSlice[at] = Math.min(first, count - 1);
  rough.lastSlice[at] = Math.min(last, count - 1);
  rough.height[at] = height;
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
