import type { Parts } from "../control/parts.ts";
import { type Call, callsOf, type Motions } from "../motion/motions.ts";
import type { PlannerPolicy } from "../problem.ts";

/**
 * One stretch of an analog part over which the train keeps one output. Entries of its path, both included: those
 * that it covers at any time of the run. `standingThrough`: the last of them that it stands in at the start, −1: it comes
 * moving, which is a fault of the path.
 */
export interface Run {
  readonly train: number;
  readonly part: number;
  /** When it needs its output. */
  readonly startMs: number;
  readonly endMs: number;
  /** When it moves, between two stands. */
  readonly departMs: number;
  readonly arriveMs: number;
  readonly firstEntry: number;
  readonly standingThrough: number;
  readonly lastEntry: number;
}

/** A stretch between two stands, by the timetable. */
interface Stretch {
  readonly from: Call | null;
  readonly to: Call | null;
}

/**
 * Cuts the analog parts of every working into runs. A train may give its output up at a call that it stands at for
 * at least releaseDwell, where the release after its arrival is over before the set-up for its departure; a pass
 * never counts, since a moving train keeps its output. The first run of a part begins at its departure less the longer of
 * setUp and pickUp, the last ends at its arrival plus the longer of release and handIn; between them a run ends at arrival +
 * release and the next begins at departure − setUp. After: by train and time. Cost: linear in path entries.
 */
export function cutRuns(policy: PlannerPolicy, motions: Motions, parts: Parts): Run[] {
  const runs: Run[] = [];
  for (let train = 0; train < motions.timed.length; train++) {
    const end = parts.firstPart[train + 1] as number;
    for (let part = parts.firstPart[train] as number; part < end; part++)
      if (parts.analog[part] === 1) runs.push(...cutPart(policy, motions, parts, train, part));
  }
  return runs;
}

function cutPart(policy: PlannerPolicy, motions: Motions, parts: Parts, train: number, part: number): Run[] {
  const departMs = parts.departMs[part] as number;
  const arriveMs = parts.arriveMs[part] as number;
  const inside = callsOf(motions, train).filter((call) => isInside(parts, part, call));
  const starts = inside.find((call) => call.departMs === departMs) ?? null;
  const ends = inside.findLast((call) => call.arriveMs === arriveMs) ?? null;
  const released = inside.filter((call) => call !== starts && call !== ends && mayRelease(policy, call));
  const stands = [starts, ...released, ends];
  return stands.slice(1).map((to, at) => {
    const from = stands[at] as Call | null;
    const leaves = from?.departMs ?? departMs;
    const halts = to?.arriveMs ?? arriveMs;
    const before = at === 0 ? Math.max(policy.setUpMs, policy.pickUpMs) : policy.setUpMs;
    const after = at === stands.length - 2 ? Math.max(policy.releaseMs, policy.handInMs) : policy.releaseMs;
    return {
      train,
      part,
      startMs: leaves - before,
      endMs: halts + after,
      departMs: leaves,
      arriveMs: halts,
      ...coveredEntries(motions, parts, train, part, { from, to }),
    };
  });
}

function isInside(parts: Parts, part: number, call: Call): boolean {
  return (
    call.entry >= (parts.firstEntry[part] as number) &&
    call.entry <= (parts.lastEntry[part] as number) &&
    call.departMs >= (parts.departMs[part] as number) &&
    call.arriveMs <= (parts.arriveMs[part] as number)
  );
}

function mayRelease(policy: PlannerPolicy, call: Call): boolean {
  const dwell = call.departMs - call.arriveMs;
  return dwell > 0 && dwell >= policy.releaseDwellMs && dwell >= policy.releaseMs + policy.setUpMs;
}

function coveredEntries(motions: Motions, parts: Parts, train: number, part: number, stretch: Stretch) {
  const partFirst = parts.firstEntry[part] as number;
  const lastEntry = stretch.to?.entry ?? (parts.lastEntry[part] as number);
  if (!stretch.from) return { firstEntry: partFirst, standingThrough: -1, lastEntry };
  const { entry, headMm } = stretch.from;
  const tailMm = headMm - (motions.lengthMm[train] as number);
  const row = motions.firstRow[train] as number;
  let firstEntry = entry;
  while (firstEntry > partFirst && (motions.endMm[row + firstEntry - 1] as number) > tailMm) firstEntry--;
  return { firstEntry, standingThrough: entry, lastEntry };
}
