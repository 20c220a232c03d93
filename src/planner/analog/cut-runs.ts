import { ALWAYS, type Parts } from "../control/parts.ts";
import { type Call, callsOf, type Motions, startMmOf } from "../motion/motions.ts";
import type { PlannerPolicy } from "../problem.ts";

/**
 * One stretch of an analog part over which the train keeps one output. Entries of its path, both included: those
 * that it covers at any time of the run. `standingThrough`: the last of them that it stands in at the start, −1:
 * it comes moving, which is a fault of the path.
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

/**
 * Cuts the analog parts of every working into runs. A train may give its output up at a call that it stands at
 * for at least releaseDwell, where the release after its arrival is over before the set-up for its departure; a
 * pass never counts, since a moving train keeps its output. The first run of a part begins at its departure less
 * the longer of setUp and pickUp, the last ends at its arrival plus the longer of release and handIn; between
 * them a run ends at arrival + release and the next begins at departure − setUp. After: by train and time. Cost:
 * linear in path entries.
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
  const whole = asOneRun(policy, parts, train, part);
  const released = callsOf(motions, train).filter(
    (call) =>
      call.entry >= whole.firstEntry &&
      call.entry <= whole.lastEntry &&
      call.arriveMs > whole.departMs &&
      call.departMs < whole.arriveMs &&
      mayRelease(policy, call),
  );
  const runs: Run[] = [];
  let rest: Run = {
    ...whole,
    startMs: whole.departMs - Math.max(policy.setUpMs, policy.pickUpMs),
    endMs: whole.arriveMs + Math.max(policy.releaseMs, policy.handInMs),
  };
  for (const { entry, headMm, arriveMs, departMs } of released) {
    runs.push({ ...rest, arriveMs, endMs: arriveMs + policy.releaseMs, lastEntry: entry });
    const tailMm = headMm - (motions.lengthMm[train] as number);
    let firstEntry = entry;
    while (firstEntry > whole.firstEntry && startMmOf(motions, train, firstEntry) > tailMm) firstEntry--;
    rest = { ...rest, departMs, startMs: departMs - policy.setUpMs, firstEntry, standingThrough: entry };
  }
  return [...runs, rest];
}

/** A whole part, analog or digital, as one run with set-up and release only. */
export function asOneRun(policy: PlannerPolicy, parts: Parts, train: number, part: number): Run {
  const firstEntry = parts.firstEntry[part] as number;
  const departMs = parts.departMs[part] as number;
  const arriveMs = parts.arriveMs[part] as number;
  const standing = firstEntry === 0 || (parts.sinceMs[part] as number) > -ALWAYS;
  return {
    train,
    part,
    startMs: departMs - policy.setUpMs,
    endMs: arriveMs + policy.releaseMs,
    departMs,
    arriveMs,
    firstEntry,
    standingThrough: standing ? firstEntry : -1,
    lastEntry: parts.lastEntry[part] as number,
  };
}

function mayRelease(policy: PlannerPolicy, call: Call): boolean {
  const dwell = call.departMs - call.arriveMs;
  return dwell > 0 && dwell >= policy.releaseDwellMs && dwell >= policy.releaseMs + policy.setUpMs;
}
