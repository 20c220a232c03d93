import { type GroupedRows, sortInGroups } from "../order/sort-in-groups.ts";
import type { StepEvents } from "./step-events.ts";

/** Step functions and, group by group, their sums: districts and the supplies that feed them. */
export interface StepSweep {
  readonly events: StepEvents;
  readonly groupOfKey: Int32Array;
  /** Events by group, then instant. */
  readonly sorted: GroupedRows;
  readonly keyPeak: Int32Array;
  /** First instant of the peak; `startMs` where the function is never above 0. */
  readonly keyPeakAtMs: Int32Array;
  readonly groupPeak: Int32Array;
  readonly groupPeakAtMs: Int32Array;
}

/**
 * Peaks of every function and every group's sum in one sweep. A key's function starts at 0, a group's sum at its
 * `constant`, from `startMs` on; changes at one instant count together. Before: no event earlier than `startMs`,
 * unless nothing is constant. Cost: linear in events for spread instants (see sortInGroups).
 */
export function sweepSteps(
  events: StepEvents,
  groupOfKey: Int32Array,
  constants: Int32Array,
  startMs: number,
): StepSweep {
  const groups = constants.length;
  const { count, key } = events;
  const group = new Int32Array(count);
  for (let i = 0; i < count; i++) group[i] = groupOfKey[key[i] as number] as number;
  const sorted = sortInGroups(count, group, groups, events.ms);
  const sweep: StepSweep = {
    events,
    groupOfKey,
    sorted,
    keyPeak: new Int32Array(groupOfKey.length),
    keyPeakAtMs: new Int32Array(groupOfKey.length).fill(startMs),
    groupPeak: constants.slice(),
    groupPeakAtMs: new Int32Array(groups).fill(startMs),
  };
  const now = new Int32Array(groupOfKey.length);
  for (let g = 0; g < groups; g++) sweepGroup(sweep, g, constants[g] as number, now);
  return sweep;
}

function sweepGroup(sweep: StepSweep, group: number, constant: number, now: Int32Array): void {
  const { keyPeak, keyPeakAtMs } = sweep;
  const { start, row, time } = sweep.sorted;
  const { key, change } = sweep.events;
  const end = start[group + 1] as number;
  let sum = constant;
  let peak = constant;
  let peakAtMs = sweep.groupPeakAtMs[group] as number;
  for (let i = start[group] as number; i < end; ) {
    const ms = time[i] as number;
    const first = i;
    do {
      const event = row[i] as number;
      const by = change[event] as number;
      const changed = key[event] as number;
      now[changed] = (now[changed] as number) + by;
      sum += by;
      i++;
    } while (i < end && time[i] === ms);
    if (sum > peak) {
      peak = sum;
      peakAtMs = ms;
    }
    for (let j = first; j < i; j++) {
      const k = key[row[j] as number] as number;
      if ((now[k] as number) > (keyPeak[k] as number)) {
        keyPeak[k] = now[k] as number;
        keyPeakAtMs[k] = ms;
      }
    }
  }
  sweep.groupPeak[group] = peak;
  sweep.groupPeakAtMs[group] = peakAtMs;
}
