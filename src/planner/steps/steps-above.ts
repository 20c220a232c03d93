import { sortInGroups } from "../order/sort-in-groups.ts";
import type { Interval } from "../problem.ts";
import type { StepEvents } from "./step-events.ts";

/** Step functions by key, and their sums by group, each against a line that it may be above at some instant. */
export interface LinedSteps {
  readonly events: StepEvents;
  readonly groupOfKey: Int32Array;
  /** Added to each group's sum. */
  readonly constants: Int32Array;
  readonly keyLine: Float64Array;
  readonly groupLine: Float64Array;
  /** Holds the events, or nearly: those outside count with its ends. */
  readonly span: Interval;
}

export interface Above {
  /** 1: above its line at some instant. */
  readonly keys: Uint8Array;
  readonly groups: Uint8Array;
}

/**
 * Which functions are ever above their line: exact, without sorting all events. Time is cut into equal slices, about
 * one an event. From a slice's opening value its function can rise by no more than the rises within the slice; where
 * that stays on or below the line nothing more is asked. Only the events of the other slices are put in order and
 * followed instant by instant. Cost: linear in events and slices, then sorting the events of those slices.
 */
export function stepsAbove(lined: LinedSteps): Above {
  const slices = cutSlices(lined);
  const hot = findHotSlices(lined, slices);
  const above = {
    keys: new Uint8Array(lined.groupOfKey.length),
    groups: new Uint8Array(lined.constants.length),
  };
  if (hot.owner.length > 0) followHotSlices(lined, slices, hot, above);
  return above;
}

/** Columns of one place a slice, function after function. */
interface Slices {
  readonly bits: number;
  readonly shift: number;
  /** Change of each key within the slice; then, the value it opens with. */
  readonly key: Int32Array;
  readonly keyRises: Int32Array;
  readonly group: Int32Array;
  readonly groupRises: Int32Array;
}

function cutSlices({ events, groupOfKey, constants, span }: LinedSteps): Slices {
  const keys = groupOfKey.length;
  let bits = 4;
  while (keys << bits < events.count) bits++;
  let shift = 0;
  while ((span.endMs - span.startMs) >>> shift >= 1 << bits) shift++;
  const slices: Slices = {
    bits,
    shift,
    key: new Int32Array(keys << bits),
    keyRises: new Int32Array(keys << bits),
    group: new Int32Array(constants.length << bits),
    groupRises: new Int32Array(constants.length << bits),
  };
  const { key, keyRises } = slices;
  for (let i = 0; i < events.count; i++) {
    const at = sliceOf(slices, events.key[i] as number, (events.ms[i] as number) - span.startMs);
    const by = events.change[i] as number;
    key[at] = (key[at] as number) + by;
    if (by > 0) keyRises[at] = (keyRises[at] as number) + by;
  }
  return slices;
}

function sliceOf({ bits, shift }: Slices, of: number, sinceMs: number): number {
  const slice = sinceMs < 0 ? 0 : sinceMs >>> shift;
  const last = (1 << bits) - 1;
  return (of << bits) | (slice < last ? slice : last);
}

/** Slices in which a function may be above its line, numbered as found. */
interface HotSlices {
  /** Number of each slice, −1: not hot. */
  readonly key: Int32Array;
  readonly group: Int32Array;
  /** By number: the key, or the number of keys + the group. */
  readonly owner: number[];
  /** By number: what its function opens with, constants left out, and may not exceed. */
  readonly opening: number[];
  readonly line: number[];
}

function findHotSlices(lined: LinedSteps, slices: Slices): HotSlices {
  const { groupOfKey, constants, keyLine, groupLine } = lined;
  const { bits, key, keyRises, group, groupRises } = slices;
  const keys = groupOfKey.length;
  const hot: HotSlices = {
    key: new Int32Array(key.length).fill(-1),
    group: new Int32Array(group.length).fill(-1),
    owner: [],
    opening: [],
    line: [],
  };
  for (let k = 0; k < keys; k++) {
    const toGroup = ((groupOfKey[k] as number) - k) << bits;
    const line = keyLine[k] as number;
    let value = 0;
    for (let at = k << bits; at < (k + 1) << bits; at++) {
      const rises = keyRises[at] as number;
      if (value + rises > line) hot.key[at] = addHot(hot, k, value, line);
      group[at + toGroup] = (group[at + toGroup] as number) + value;
      groupRises[at + toGroup] = (groupRises[at + toGroup] as number) + rises;
      value += key[at] as number;
    }
  }
  for (let g = 0; g < constants.length; g++) {
    const line = (groupLine[g] as number) - (constants[g] as number);
    for (let at = g << bits; at < (g + 1) << bits; at++) {
      const value = group[at] as number;
      if (value + (groupRises[at] as number) > line) hot.group[at] = addHot(hot, keys + g, value, line);
    }
  }
  return hot;
}

function addHot(hot: HotSlices, owner: number, opening: number, line: number): number {
  hot.owner.push(owner);
  hot.opening.push(opening);
  return hot.line.push(line) - 1;
}

function followHotSlices(lined: LinedSteps, slices: Slices, hot: HotSlices, above: Above): void {
  const { events, groupOfKey, span } = lined;
  const numbers: number[] = [];
  const chosen: number[] = [];
  for (let i = 0; i < events.count; i++) {
    const key = events.key[i] as number;
    const at = sliceOf(slices, key, (events.ms[i] as number) - span.startMs);
    const byKey = hot.key[at] as number;
    const byGroup = hot.group[at + (((groupOfKey[key] as number) - key) << slices.bits)] as number;
    if (byKey >= 0) chosen.push(i) && numbers.push(byKey);
    if (byGroup >= 0) chosen.push(i) && numbers.push(byGroup);
  }
  const ms = new Int32Array(chosen.length);
  for (let i = 0; i < ms.length; i++) ms[i] = events.ms[chosen[i] as number] as number;
  const { start, row, time } = sortInGroups(ms.length, Int32Array.from(numbers), hot.owner.length, ms);
  const keys = above.keys.length;
  for (let number = 0; number < hot.owner.length; number++) {
    const owner = hot.owner[number] as number;
    const mark = owner < keys ? above.keys : above.groups;
    const marked = owner < keys ? owner : owner - keys;
    if (mark[marked] === 1) continue;
    const line = hot.line[number] as number;
    let value = hot.opening[number] as number;
    let isAbove = value > line;
    const end = start[number + 1] as number;
    for (let i = start[number] as number; i < end && !isAbove; i++) {
      value += events.change[chosen[row[i] as number] as number] as number;
      // what changes at one instant changes together
      isAbove = value > line && (i + 1 === end || time[i] !== time[i + 1]);
    }
    if (isAbove) mark[marked] = 1;
  }
}
