import type { Parts } from "../control/parts.ts";
import type { Motions } from "../motion/motions.ts";

/** Longest runs of path entries in one power district, along one train's path; the first `count` rows hold. */
export interface Stretches {
  count: number;
  readonly district: Int32Array;
  /** Where it begins along the path; −1 where the train starts in it. */
  readonly startMm: Int32Array;
  readonly endMm: Int32Array;
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
    startMm: new Int32Array(rows),
    endMm: new Int32Array(rows),
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
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++)
    if (parts.analog[part] === 0) addPart(stretches, motions, parts, districtOf, train, part);
}

function addPart(
  stretches: Stretches,
  motions: Motions,
  parts: Parts,
  districtOf: Int32Array,
  train: number,
  part: number,
): void {
  const { section, endMm } = motions;
  const pathRow = motions.firstRow[train] as number;
  const last = pathRow + (parts.lastEntry[part] as number);
  let at = stretches.count - 1;
  let current = -1;
  for (let row = pathRow + (parts.firstEntry[part] as number); row <= last; row++) {
    const district = districtOf[section[row] as number] as number;
    if (district !== current && district >= 0) {
      at++;
      stretches.district[at] = district;
      stretches.startMm[at] = row === pathRow ? -1 : (endMm[row - 1] as number);
      // only the part's outermost sections change control
      stretches.sinceMs[at] = parts.sinceMs[part] as number;
      stretches.untilMs[at] = parts.untilMs[part] as number;
    }
    current = district;
    if (district >= 0) stretches.endMm[at] = endMm[row] as number;
  }
  stretches.count = at + 1;
}
