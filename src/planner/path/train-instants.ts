import type { Plan } from "../compile-plan.ts";
import { firstDeparture, lastArrival, STANDS } from "../motion/motions.ts";
import type { Interval, PathEntry, Train } from "../problem.ts";

/** The instant at which a train's head enters a path entry, as a span; where it starts there, or has no instants, its first stated time. */
export function entering({ problem, motions }: Plan, train: number, entry: number): Interval {
  const row = (motions.firstRow[train] as number) + entry;
  if (motions.timed[train] === 0) return instant(firstStated((problem.trains[train] as Train).path));
  const enter = motions.enterMs[row] as number;
  return instant(enter === STANDS ? firstDeparture(motions, train) : enter);
}

/** While any of the train is in the section of a path entry and it is on its way; at least 1 ms. */
export function passing(plan: Plan, train: number, entry: number): Interval {
  const { motions } = plan;
  const from = entering(plan, train, entry);
  if (motions.timed[train] === 0) return from;
  const clear = motions.clearMs[(motions.firstRow[train] as number) + entry] as number;
  const endMs = clear === STANDS ? lastArrival(motions, train) : clear;
  return { startMs: from.startMs, endMs: Math.max(endMs, from.endMs) };
}

export function instant(ms: number): Interval {
  return { startMs: ms, endMs: ms + 1 };
}

function firstStated(path: readonly PathEntry[]): number {
  const first = path[0] as PathEntry;
  return first.departMs ?? first.arriveMs ?? 0;
}
