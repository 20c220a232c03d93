import type { PathEntry, Problem, Train } from "../problem.ts";
import { type Track, tabulateTrack } from "../track/track.ts";
import { roundRun } from "./instant.ts";
import { FARTHEST_MS, type Motions, STANDS } from "./motions.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;
const FARTHEST = FARTHEST_MS;

/**
 * Motion of every train. Before: each path has at least one entry, the first with a departure, the last with an
 * arrival. Stated times of the first entry's arrival and the last one's departure count only for running backwards;
 * an entry in between with one time is a pass. After: see Motions; every instant is rounded once, here. Cost: linear
 * in path entries. Throws a RangeError for times farther than FARTHEST_MS or paths beyond 32 bits of mm.
 */
export function computeMotions(problem: Problem, track: Track = tabulateTrack(problem)): Motions {
  const motions = allocate(problem.trains);
  let call = 0;
  for (let train = 0; train < problem.trains.length; train++) {
    const { path, lengthMm } = problem.trains[train] as Train;
    motions.lengthMm[train] = lengthMm;
    motions.firstCall[train] = call;
    call += readPath(motions, train, path, track);
    motions.firstCall[train + 1] = call;
    runTrain(motions, train);
  }
  return motions;
}

function allocate(trains: readonly Train[]): Motions {
  const firstRow = new Int32Array(trains.length + 1);
  for (let train = 0; train < trains.length; train++)
    firstRow[train + 1] = (firstRow[train] as number) + (trains[train] as Train).path.length;
  const rows = firstRow[trains.length] as number;
  // a path of one entry makes two calls
  const calls = rows + trains.length;
  return {
    timed: new Uint8Array(trains.length),
    lengthMm: new Int32Array(trains.length),
    firstRow,
    trainOfRow: new Int32Array(rows),
    section: new Int32Array(rows),
    endMm: new Int32Array(rows),
    enterMs: new Int32Array(rows),
    clearMs: new Int32Array(rows),
    firstCall: new Int32Array(trains.length + 1),
    callEntry: new Int32Array(calls),
    callMm: new Int32Array(calls),
    arriveMs: new Int32Array(calls),
    departMs: new Int32Array(calls),
  };
}

/**
 * Writes the rows of a train, its calls from `firstCall[train]` on, and whether it is timed: not where an instant is
 * below the one before it, or a run takes no time.
 * @returns the number of calls
 */
export function readPath(motions: Motions, train: number, path: readonly PathEntry[], track: Track): number {
  const { trainOfRow, section, endMm } = motions;
  const row = motions.firstRow[train] as number;
  const first = motions.firstCall[train] as number;
  const last = path.length - 1;
  let call = first;
  let end = 0;
  let latest = -Infinity;
  let runsForwards = true;
  for (let entry = 0; entry <= last; entry++) {
    const stated = path[entry] as PathEntry;
    end += track.lengthMm[stated.section] as number;
    trainOfRow[row + entry] = train;
    section[row + entry] = stated.section;
    endMm[row + entry] = end;
    const arrive = stated.arriveMs ?? stated.departMs;
    const depart = stated.departMs ?? stated.arriveMs;
    if (arrive === null || depart === null) continue;
    const early = last === 0 ? depart : arrive;
    const late = last === 0 ? arrive : depart;
    if (early < latest || late < early || (early === latest && entry > 0)) runsForwards = false;
    if (early < -FARTHEST || late > FARTHEST) throw new RangeError("a time is too far away");
    latest = late;
    if (entry === 0) addCall(motions, call++, entry, end, depart, depart);
    if (entry === last) addCall(motions, call++, entry, end, arrive, arrive);
    else if (entry > 0) addCall(motions, call++, entry, end, arrive, depart);
  }
  if (end + (motions.lengthMm[train] as number) > 0x7fff_ffff) throw new RangeError("a path is too long");
  motions.timed[train] = runsForwards ? 1 : 0;
  return call - first;
}

function addCall(
  { callEntry, callMm, arriveMs, departMs }: Motions,
  call: number,
  entry: number,
  headMm: number,
  arrive: number,
  depart: number,
): void {
  callEntry[call] = entry;
  callMm[call] = headMm;
  arriveMs[call] = arrive;
  departMs[call] = depart;
}

/** Entering and clearing instants of one timed train from its calls, run by run. */
export function runTrain(motions: Motions, train: number): void {
  if (motions.timed[train] === 0) return;
  const { enterMs, clearMs, callEntry, callMm, arriveMs, departMs, endMm } = motions;
  const first = motions.firstRow[train] as number;
  const end = motions.firstRow[train + 1] as number;
  const lengthMm = motions.lengthMm[train] as number;
  const lastCall = (motions.firstCall[train + 1] as number) - 1;
  let clearing = first;
  enterMs[first] = NEVER;
  for (let call = motions.firstCall[train] as number; call < lastCall; call++) {
    const from = callMm[call] as number;
    const to = callMm[call + 1] as number;
    const depart = departMs[call] as number;
    const duration = (arriveMs[call + 1] as number) - depart;
    const msPerMm = duration / (to - from);
    // last instant at the section's beginning: where a call is just there, the run that leaves it counts
    const lastEntered = first + (callEntry[call + 1] as number);
    for (let row = first + (callEntry[call] as number) + 1; row <= lastEntered; row++)
      enterMs[row] = depart + roundRun((endMm[row - 1] as number) - from, msPerMm, to - from, duration);
    // first instant past its end: where a call is just there, the run that ends there counts
    for (; clearing < end; clearing++) {
      const tail = (endMm[clearing] as number) + lengthMm;
      if (tail > to) break;
      clearMs[clearing] = depart + roundRun(tail - from, msPerMm, to - from, duration);
    }
  }
  for (; clearing < end; clearing++) clearMs[clearing] = NEVER;
}
