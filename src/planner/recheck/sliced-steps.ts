/**
 * Step functions that can be changed one step at a time and always know their peaks. Each function's time is cut into
 * equal slices; a slice holds its steps in order, one an instant, and a tree over the slices (a segment tree: Bentley
 * 1977, from memory) keeps for each stretch how much the function rises over it and the most it rises above its start.
 * Changing a step costs the steps of its slice, settling a slice the logarithm of the slices.
 */
export interface SlicedSteps {
  readonly startMs: number;
  /** Slices of each function to one ms. */
  readonly slicesPerMs: Float64Array;
  /** Number of slices of each function, a power of two. */
  readonly slices: Int32Array;
  /** Where the function's slices begin among all. */
  readonly firstSlice: Int32Array;
  /** By slice: pairs of instant and change; only the first `count` pairs hold. */
  readonly steps: Int32Array[];
  readonly count: Int32Array;
  /** By slice: 1 if its steps have changed since it was settled. */
  readonly isDirty: Uint8Array;
  /** Function and slice in turn. */
  readonly dirty: number[];
  /** Tree of function f: node n at 2 × firstSlice[f] + n, root 1, leaves from slices[f] on. */
  readonly rise: Int32Array;
  readonly most: Int32Array;
}

/** Steps that a slice is meant to hold on the average. */
const STEPS_A_SLICE = 16;

/**
 * All functions 0 for ever. `expected` steps each over the span; steps outside it count with the first or last slice.
 */
export function createSlicedSteps(expected: Int32Array, startMs: number, endMs: number): SlicedSteps {
  const slices = expected.map((steps) => 2 ** Math.max(0, Math.ceil(Math.log2(steps / STEPS_A_SLICE))));
  const firstSlice = new Int32Array(slices.length);
  let all = 0;
  for (let f = 0; f < slices.length; f++) {
    firstSlice[f] = all;
    all += slices[f] as number;
  }
  return {
    startMs,
    slicesPerMs: Float64Array.from(slices, (count) => count / Math.max(1, endMs - startMs)),
    slices,
    firstSlice,
    steps: Array.from({ length: all }, () => new Int32Array(2 * STEPS_A_SLICE)),
    count: new Int32Array(all),
    isDirty: new Uint8Array(all),
    dirty: [],
    rise: new Int32Array(2 * all),
    most: new Int32Array(2 * all),
  };
}

/** Greatest value of a settled function, 0 at least. */
export function peakOf(sliced: SlicedSteps, of: number): number {
  return sliced.most[2 * (sliced.firstSlice[of] as number) + 1] as number;
}

/** Changes function `of` by `change` from `ms` on. Its peak holds again when it is settled. */
export function changeStep(sliced: SlicedSteps, of: number, ms: number, change: number): void {
  const slices = sliced.slices[of] as number;
  const at = Math.floor((ms - sliced.startMs) * (sliced.slicesPerMs[of] as number));
  const slice = (sliced.firstSlice[of] as number) + Math.min(Math.max(at, 0), slices - 1);
  if (sliced.isDirty[slice] === 0) {
    sliced.isDirty[slice] = 1;
    sliced.dirty.push(of, slice);
  }
  const steps = sliced.steps[slice] as Int32Array;
  const end = 2 * (sliced.count[slice] as number);
  let place = end;
  while (place > 0 && (steps[place - 2] as number) >= ms) place -= 2;
  if (place < end && steps[place] === ms) {
    const left = (steps[place + 1] as number) + change;
    steps[place + 1] = left;
    if (left === 0) removePair(sliced, slice, place);
  } else insertPair(sliced, slice, place, ms, change);
}

function removePair(sliced: SlicedSteps, slice: number, place: number): void {
  const steps = sliced.steps[slice] as Int32Array;
  const end = 2 * (sliced.count[slice] as number);
  for (let i = place + 2; i < end; i++) steps[i - 2] = steps[i] as number;
  sliced.count[slice] = end / 2 - 1;
}

function insertPair(sliced: SlicedSteps, slice: number, place: number, ms: number, change: number): void {
  let steps = sliced.steps[slice] as Int32Array;
  const end = 2 * (sliced.count[slice] as number);
  if (end === steps.length) {
    const larger = new Int32Array(2 * end);
    larger.set(steps);
    sliced.steps[slice] = larger;
    steps = larger;
  }
  for (let i = end - 1; i >= place; i--) steps[i + 2] = steps[i] as number;
  steps[place] = ms;
  steps[place + 1] = change;
  sliced.count[slice] = end / 2 + 1;
}

/**
 * Brings one changed slice and its function's peak up to date: up the tree for as long as anything changes. Before: the
 * slice is marked dirty. After: it is not; who calls this for all of `dirty` then empties the list.
 */
export function settleSlice(sliced: SlicedSteps, of: number, slice: number): void {
  const { isDirty, firstSlice, slices, rise, most } = sliced;
  isDirty[slice] = 0;
  const tree = 2 * (firstSlice[of] as number);
  let node = (slices[of] as number) + slice - (firstSlice[of] as number);
  addUpSlice(sliced, slice, tree + node);
  for (node >>= 1; node >= 1; node >>= 1) {
    const left = tree + 2 * node;
    const leftRise = rise[left] as number;
    const itsRise = leftRise + (rise[left + 1] as number);
    const itsMost = Math.max(most[left] as number, leftRise + (most[left + 1] as number));
    if (rise[tree + node] === itsRise && most[tree + node] === itsMost) return;
    rise[tree + node] = itsRise;
    most[tree + node] = itsMost;
  }
}

function addUpSlice({ steps, count, rise, most }: SlicedSteps, slice: number, leaf: number): void {
  const pairs = steps[slice] as Int32Array;
  const end = 2 * (count[slice] as number);
  let value = 0;
  let highest = 0;
  for (let i = 1; i < end; i += 2) {
    value += pairs[i] as number;
    if (value > highest) highest = value;
  }
  rise[leaf] = value;
  most[leaf] = highest;
}
