import type { Parts } from "../control/parts.ts";
import type { Motions } from "../motion/motions.ts";

/** Longest runs of path entries in one power district, along one train's path; the first `count` rows hold. */
export interface Stretches {
  count: number;
  readonly district: Int32Array;
  /** First and last of its rows in Motions. */
  readonly firstRow: Int32Array;
  readonly lastRow: Int32Array;
  /** When its track is under digital control; see Parts. */
  readonly sinceMs: Int32Array;
  readonly untilMs: Int32Array;
}

export function createStretches(motions: Motions): Stretches {
  let most = 0;
  for (let train = 0; train < motions.timed.length; train++)
    most = Math.max(most, (motions.firstRow[train + 1] as number) - (motions.firstRow[train] as number));
  // a section shared by two parts counts in both
  const rows = 2 * most;
  return {
    count: 0,
    district: new Int32Array(rows),
    firstRow: new Int32Array(rows),
    lastRow: new Int32Array(rows),
    sinceMs: new Int32Array(rows),
    untilMs: new Int32Array(rows),
  };
}

/** Overwrites `stretches` with those of a train. Sections of district −1 belong to none. Linear in its path entries. */
export function findStretches(
  stretches: Stretches,
  motions: Motions,
  parts: Parts,
  districtOf: Int32Array,
  train: number,
): void {
  stretches.count = 0;
  const row = motions.firstRow[train] as number;
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++)
    if (parts.analog[part] === 0) addPart(stretches, motions.section, parts, districtOf, row, part);
}

function addPart(
  stretches: Stretches,
  section: Int32Array,
  parts: Parts,
  districtOf: Int32Array,
  pathRow: number,
  part: number,
): void {
  const { district, firstRow, lastRow } = stretches;
  const last = pathRow + (parts.lastEntry[part] as number);
  let at = stretches.count - 1;
  let current = -1;
  for (let row = pathRow + (parts.firstEntry[part] as number); row <= last; row++) {
    const here = districtOf[section[row] as number] as number;
    if (here !== current && here >= 0) {
      at++;
      district[at] = here;
      firstRow[at] = row;
      // only the part's outermost sections change control
      stretches.sinceMs[at] = parts.sinceMs[part] as number;
      stretches.untilMs[at] = parts.untilMs[part] as number;
    }
    current = here;
    if (here >= 0) lastRow[at] = row;
  }
  stretches.count = at + 1;
}

/** Leaves only the stretches whose district is wanted by the train. */
export function keepStretches(stretches: Stretches, wantedBy: Int32Array, train: number): void {
  const { district, firstRow, lastRow, sinceMs, untilMs } = stretches;
  let kept = 0;
  for (let i = 0; i < stretches.count; i++) {
    if (wantedBy[district[i] as number] !== train) continue;
    district[kept] = district[i] as number;
    firstRow[kept] = firstRow[i] as number;
    lastRow[kept] = lastRow[i] as number;
    sinceMs[kept] = sinceMs[i] as number;
    untilMs[kept] = untilMs[i] as number;
    kept++;
  }
  stretches.count = kept;
}
