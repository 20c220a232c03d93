import type { RoughSteps } from "./rough-steps.ts";

/** Lines that functions are held against, and the sums of groups of them. */
export interface StepLines {
  readonly groupOf: Int32Array;
  readonly key: Float64Array;
  /** A constant part of the sum is taken off already. */
  readonly group: Float64Array;
}

/**
 * Which rough rows matter: 1 where in one of its slices the rough function of its key, or the sum of that key's group,
 * is above the line. In the slices of the others no true function can be above its line; so a function put together
 * exactly from the rows that matter is right wherever it is above its line, and on or below it elsewhere. Cost: linear
 * in rows and slices.
 */
export function hotRows(rough: RoughSteps, lines: StepLines): Uint8Array {
  const slices = rough.slices.count;
  const hot = countHot(rough, lines);
  const marks = new Uint8Array(rough.count);
  for (let i = 0; i < rough.count; i++) {
    const at = (rough.key[i] as number) * slices;
    const upTo = hot[at + (rough.lastSlice[i] as number)] as number;
    const first = rough.firstSlice[i] as number;
    const before = first === 0 ? 0 : (hot[at + first - 1] as number);
    marks[i] = upTo > before ? 1 : 0;
  }
  return marks;
}

/** For each key slice by slice: how many of its slices up to here are hot. */
function countHot(rough: RoughSteps, lines: StepLines): Int32Array {
  const slices = rough.slices.count;
  const keys = lines.groupOf.length;
  const values = addUp(rough, keys);
  const sums = new Int32Array(lines.group.length * slices);
  for (let key = 0; key < keys; key++) {
    let sum = (lines.groupOf[key] as number) * slices;
    let value = 0;
    for (let at = key * slices; at < (key + 1) * slices; at++, sum++) {
      value += values[at] as number;
      values[at] = value;
      sums[sum] = (sums[sum] as number) + value;
    }
  }
  for (let key = 0; key < keys; key++) {
    const group = lines.groupOf[key] as number;
    const line = lines.key[key] as number;
    const groupLine = lines.group[group] as number;
    let sum = group * slices;
    let count = 0;
    for (let at = key * slices; at < (key + 1) * slices; at++, sum++) {
      if ((values[at] as number) > line || (sums[sum] as number) > groupLine) count++;
      values[at] = count;
    }
  }
  return values;
}

/** By how much each key's rough function changes from one slice to the next. */
function addUp(rough: RoughSteps, keys: number): Int32Array {
  const slices = rough.slices.count;
  const change = new Int32Array(keys * slices);
  for (let i = 0; i < rough.count; i++) {
    const at = (rough.key[i] as number) * slices;
    const height = rough.height[i] as number;
    const first = at + (rough.firstSlice[i] as number);
    change[first] = (change[first] as number) + height;
    const after = (rough.lastSlice[i] as number) + 1;
    if (after < slices) change[at + after] = (change[at + after] as number) - height;
  }
  return change;
}
