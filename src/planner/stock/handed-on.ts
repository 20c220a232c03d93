import { firstDeparture, lastArrival, type Motions, STANDS } from "../motion/motions.ts";
import type { Problem, Train } from "../problem.ts";

/**
 * When stock that works `before` and then `after` leaves the place where the first arrived: taken away by hand at its
 * stated removal; put down elsewhere at the stated placing of the second; else with the second's departure, as late as
 * which it goes in any case. Never before the arrival. Design section 4. Both trains timed.
 */
export function goesMs(problem: Problem, motions: Motions, before: number, after: number): number {
  const { removedMs } = problem.trains[before] as Train;
  const { placedMs } = problem.trains[after] as Train;
  const taken =
    removedMs ?? (placedMs !== null && !beginsWhereEnded(motions, before, after) ? placedMs : null);
  const departs = firstDeparture(motions, after);
  return Math.max(lastArrival(motions, before), taken === null ? departs : Math.min(taken, departs));
}

/**
 * When stock that went by hand, at `goes`, is put down where `after` departs from: at the stated placing, at once where
 * there is none, never after the departure.
 */
export function comesMs(problem: Problem, motions: Motions, goes: number, after: number): number {
  const { placedMs } = problem.trains[after] as Train;
  return Math.min(Math.max(goes, placedMs ?? goes), firstDeparture(motions, after));
}

/** Whether a train departs from a section that the one before it covers when it has arrived. */
export function beginsWhereEnded(motions: Motions, before: number, after: number): boolean {
  const there = motions.section[motions.firstRow[after] as number] as number;
  const end = motions.firstRow[before + 1] as number;
  if (motions.section[end - 1] === there) return true;
  for (let row = motions.firstRow[before] as number; row < end; row++)
    if (motions.clearMs[row] === STANDS && motions.section[row] === there) return true;
  return false;
}
