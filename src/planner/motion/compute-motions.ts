import type { PathEntry, Problem, Train } from "../problem.ts";
import { instantAfter } from "./instant.ts";
import { FARTHEST_MS, type Motions, STANDS } from "./motions.ts";

/**
 * Motion of every train. Before: each path has at least one entry, the first with a departure, the last with an
 * arrival. Stated times of the first entry's arrival and the last one's departure count only for running backwards;
 * an entry in between with one time is a pass. After: see Motions; every instant is rounded once, here. Cost: linear
 * in path entries. Throws a RangeError for times farther than FARTHEST_MS or paths beyond 32 bits of mm.
 */
export function computeMotions(problem: Problem): Motions {
  const sectionMm = Int32Array.from(problem.sections, (section) => section.lengthMm);
  const motions = allocate(problem.trains);
  let call = 0;
  for (let train = 0; train < problem.trains.length; train++) {
    const { path, lengthMm } = problem.trains[train] as Train;
    motions.lengthMm[train] = lengthMm;
    layOut(motions, train, path, sectionMm);
    motions.firstCall[train] = call;
    call += readCalls(motions, train, path);
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
  return {
    timed: new Uint8Array(trains.length),
    lengthMm: new Int32Array(trains.length),
    firstRow,
    section: new Int32Array(rows),
    endMm: new Int32Array(rows),
    enterMs: new Int32Array(rows),
    clearMs: new Int32Array(rows),
    firstCall: new Int32Array(trains.length + 1),
    // a path of one entry makes two calls
    callEntry: new Int32Array(rows + trains.length),
    callMm: new Int32Array(rows + trains.length),
    arriveMs: new Int32Array(rows + trains.length),
    departMs: new Int32Array(rows + trains.length),
  };
}

/** Sections and their ends along the path: what of the motion does not depend on times. */
function layOut(motions: Motions, train: number, path: readonly PathEntry[], sectionMm: Int32Array): void {
  const { section, endMm } = motions;
  const first = motions.firstRow[train] as number;
  let end = 0;
  for (let entry = 0; entry < path.length; entry++) {
    const at = (path[entry] as PathEntry).section;
    section[first + entry] = at;
    end += sectionMm[at] as number;
    endMm[first + entry] = end;
  }
  if (end + (motions.lengthMm[train] as number) > 0x7fff_ffff) throw new RangeError("a path is too long");
}

/**
 * Writes the calls of a train from `firstCall[train]` on and sets `timed`.
 * @returns how many; 0 where the times run backwards: an instant below the one before it, or a run in no time
 */
export function readCalls(motions: Motions, train: number, path: readonly PathEntry[]): number {
  const { timed, callEntry, callMm, arriveMs, departMs, endMm } = motions;
  const row = motions.firstRow[train] as number;
  const first = motions.firstCall[train] as number;
  const last = path.length - 1;
  let call = first;
  let latest = -Infinity;
  timed[train] = 0;
  for (let entry = 0; entry <= last; entry++) {
    const stated = path[entry] as PathEntry;
    let arrive = stated.arriveMs ?? stated.departMs;
    let depart = stated.departMs ?? stated.arriveMs;
    if (arrive === null || depart === null) continue;
    if (last === 0) [arrive, depart] = [depart, arrive];
    if (arrive < latest || depart < arrive || (arrive === latest && entry > 0)) return 0;
    if (arrive < -FARTHEST_MS || depart > FARTHEST_MS) throw new RangeError("a time is too far away");
    latest = depart;
    callEntry[call] = entry;
    callMm[call] = endMm[row + entry] as number;
    arriveMs[call] = entry === 0 && last > 0 ? depart : arrive;
    departMs[call] = entry === last ? arrive : depart;
    call++;
    if (last === 0) {
      callEntry[call] = 0;
      callMm[call] = endMm[row] as number;
      arriveMs[call] = depart;
      departMs[call] = depart;
      call++;
    }
  }
  timed[train] = 1;
  return call - first;
}

/** Entering and clearing instants of one timed train from its calls. */
export function runTrain(motions: Motions, train: number): void {
  if (motions.timed[train] === 0) return;
  const { enterMs, clearMs, callMm, endMm } = motions;
  const first = motions.firstRow[train] as number;
  const end = motions.firstRow[train + 1] as number;
  const lengthMm = motions.lengthMm[train] as number;
  const standsAtMm = callMm[(motions.firstCall[train + 1] as number) - 1] as number;
  let entering = motions.firstCall[train] as number;
  let clearing = entering;
  enterMs[first] = STANDS;
  for (let row = first; row < end; row++) {
    const sectionEnd = endMm[row] as number;
    if (row + 1 < end) {
      // last instant there: where a call is just there, the run that leaves it counts
      while ((callMm[entering + 1] as number) <= sectionEnd) entering++;
      enterMs[row + 1] = instantAfter(motions, entering, sectionEnd);
    }
    const tail = sectionEnd + lengthMm;
    if (tail > standsAtMm) clearMs[row] = STANDS;
    else {
      // first instant there: the run that ends there counts
      while ((callMm[clearing + 1] as number) < tail) clearing++;
      clearMs[row] = instantAfter(motions, clearing, tail);
    }
  }
}
