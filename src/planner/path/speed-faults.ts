import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Locomotive, MotivePower, Problem, Train } from "../problem.ts";

/** A speed is too high only if it is more than this above its limit: instants are whole ms. Prototype km/h. */
export const SPEED_TOLERANCE_KMH = 0.05;

/**
 * Prototype km/h of a model speed of `mm` in `ms`: × scale × 3,600 s ÷ 1,000,000 mm. The clock ratio does not enter.
 * 0 for no distance.
 */
export function scaleSpeedKmh(mm: number, ms: number, scale: number): number {
  return mm === 0 ? 0 : (mm / ms) * scale * 3.6;
}

/**
 * Runs between two timed points faster than a section allows that any of the train is in on the way, or than a locomotive of
 * the train does: one finding a run, with the lowest limit passed and all that set it. Design section 4; a section's limit
 * holds until the tail has cleared it, as on any railway. Cost: linear in path entries, and for fast runs in the sections
 * under the train.
 */
export function speedFaults(plan: Plan): Finding[] {
  const { problem, motions } = plan;
  const sectionKmh = plan.track.maxSpeedKmh;
  const lowestKmh = sectionKmh.reduce((lowest, kmh) => Math.min(lowest, kmh), Infinity);
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    if (motions.timed[train] === 0) continue;
    const powerKmh = powerLimit(problem, train);
    const last = (motions.firstCall[train + 1] as number) - 1;
    for (let call = motions.firstCall[train] as number; call < last; call++) {
      const speed = runSpeed(motions, call, problem.scale);
      if (speed <= powerKmh && speed <= lowestKmh) continue;
      const limit = Math.min(powerKmh, lowestLimit(motions, sectionKmh, train, call));
      if (speed > limit + SPEED_TOLERANCE_KMH)
        findings.push(toFinding(plan, sectionKmh, train, call, speed, limit));
    }
  }
  return findings;
}

function powerLimit(problem: Problem, train: number): number {
  const { power } = problem.trains[train] as Train;
  let limit = Infinity;
  for (let i = 0; i < power.length; i++) {
    const { maxSpeedKmh } = problem.locomotives[(power[i] as MotivePower).locomotive] as Locomotive;
    if (maxSpeedKmh > 0 && maxSpeedKmh < limit) limit = maxSpeedKmh;
  }
  return limit;
}

function runSpeed({ callMm, arriveMs, departMs }: Motions, call: number, scale: number): number {
  const mm = (callMm[call + 1] as number) - (callMm[call] as number);
  return scaleSpeedKmh(mm, (arriveMs[call + 1] as number) - (departMs[call] as number), scale);
}

/** Index in the path of the first section that the tail is still in when the train moves off at `call`. */
function tailEntry(motions: Motions, train: number, call: number): number {
  const row = motions.firstRow[train] as number;
  const tailMm = (motions.callMm[call] as number) - (motions.lengthMm[train] as number);
  let entry = motions.callEntry[call] as number;
  while (entry > 0 && (motions.endMm[row + entry - 1] as number) > tailMm) entry--;
  return entry;
}

/** Of the sections that the train is in between `call` and the next. */
function lowestLimit(motions: Motions, sectionKmh: Float64Array, train: number, call: number): number {
  const row = motions.firstRow[train] as number;
  const end = row + (motions.callEntry[call + 1] as number);
  let limit = Infinity;
  for (let at = row + tailEntry(motions, train, call); at <= end; at++) {
    const kmh = sectionKmh[motions.section[at] as number] as number;
    if (kmh < limit) limit = kmh;
  }
  return limit;
}

function toFinding(
  { problem, motions }: Plan,
  sectionKmh: Float64Array,
  train: number,
  call: number,
  speed: number,
  limit: number,
): Finding {
  const row = motions.firstRow[train] as number;
  const first = tailEntry(motions, train, call);
  const entries = motions.section.subarray(row + first, row + (motions.callEntry[call + 1] as number) + 1);
  const slow = [...entries.keys()].filter((at) => sectionKmh[entries[at] as number] === limit);
  const { power } = problem.trains[train] as Train;
  const slowPower = power.filter(({ locomotive }) => problem.locomotives[locomotive]?.maxSpeedKmh === limit);
  return createFinding({
    code: "path-too-fast",
    severity: "stops",
    span: { startMs: motions.departMs[call] as number, endMs: motions.arriveMs[call + 1] as number },
    trains: [train],
    sections: [...new Set(slow.map((at) => entries[at] as number))],
    locomotives: slowPower.map(({ locomotive }) => locomotive),
    measured: speed,
    limit,
    unit: "km/h",
    pathEntry: slow[0] === undefined ? (motions.callEntry[call] as number) + 1 : first + slow[0],
  });
}
