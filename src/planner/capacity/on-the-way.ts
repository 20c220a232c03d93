import { firstDeparture, lastArrival, type Motions, STANDS } from "../motion/motions.ts";
import type { Problem } from "../problem.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;

/** Blocking times of trains on their way, train after train, real ms, half-open. */
export interface OnTheWay {
  readonly count: number;
  readonly section: Int32Array;
  readonly train: Int32Array;
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
}

/**
 * What trains take of the track while they run: as their blocking times, but that stands before a first departure and
 * after a last arrival are parking and count only with set-up and release. Cost: linear in path entries.
 */
export function onTheWay({ policy }: Problem, motions: Motions): OnTheWay {
  const rows = motions.section.length;
  const [section, train] = [new Int32Array(rows), new Int32Array(rows)];
  const [fromMs, toMs] = [new Int32Array(rows), new Int32Array(rows)];
  let count = 0;
  for (let at = 0; at < motions.timed.length; at++) {
    if (motions.timed[at] === 0) continue;
    const departs = firstDeparture(motions, at);
    const arrives = lastArrival(motions, at);
    const end = motions.firstRow[at + 1] as number;
    for (let row = motions.firstRow[at] as number; row < end; row++) {
      const enter = motions.enterMs[row] as number;
      const clear = motions.clearMs[row] as number;
      section[count] = motions.section[row] as number;
      train[count] = at;
      fromMs[count] = (enter === NEVER ? departs : enter) - policy.setUpMs;
      toMs[count] = (clear === NEVER ? arrives : clear) + policy.releaseMs;
      count++;
    }
  }
  return { count, section, train, fromMs, toMs };
}
