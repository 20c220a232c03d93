import { changeOverBetween, changeOverTrain } from "./control/change-over-between.ts";
import { cutIntoParts } from "./control/cut-into-parts.ts";
import { readPath, runTrain } from "./motion/compute-motions.ts";
import { firstDeparture, lastArrival } from "./motion/motions.ts";
import type { PathEntry, Problem, Train } from "./problem.ts";
import { openPlan, type PlanState, putTrain, settlePlan } from "./recheck/plan-state.ts";
import { chainItem } from "./recheck/workings.ts";
import { standTrain } from "./stock/plan-stock.ts";
import { ANALOG, DIGITAL } from "./track/track.ts";

/** What is wrong with a plan, in figures: the same that a full check finds. */
export interface Verdict {
  /** Pairs of blocking times of different stock on one section that takes one train. */
  readonly clashes: number;
  /** Times in which a shared section holds more than fits. */
  readonly crowds: number;
  readonly districtsTripping: number;
  /** Not tripping, but above the reserve's line. */
  readonly districtsClose: number;
  readonly suppliesOver: number;
  readonly suppliesClose: number;
  /** Command systems with too few handsets. */
  readonly systemsShort: number;
}

/** When a train runs: its path with other times, and its placing and removal by hand. */
export type Times = Pick<Train, "path" | "placedMs" | "removedMs">;

/**
 * A plan kept checked while trains are moved in time: clashes, crowds, loads of districts and supplies, need of
 * handsets. Path faults and the analog assignment are not in it: the full check has them.
 */
export interface Recheck {
  verdict(): Verdict;
  /**
   * Gives a train other times and tells what is wrong then. Its sections, and which of them have times, stay: a
   * RangeError otherwise. Cost: for each of its sections a look at the trains that use it, and for each change of
   * current the logarithm of the loads' steps; the size of the plan does not enter.
   */
  move(train: number, times: Times): Verdict;
}

export function createRecheck(problem: Problem): Recheck {
  const state = openPlan(problem);
  return {
    verdict: () => verdictOf(state),
    move: (train, times) => {
      moveTrain(state, train, times);
      return verdictOf(state);
    },
  };
}

function moveTrain(state: PlanState, train: number, times: Times): void {
  const { scene } = state;
  const { motions, stock, track } = scene;
  const before = state.trains[train] as Train;
  requireSameCalls(before.path, times.path);
  const wasTimed = motions.timed[train];
  const { code, lengthMm, power, rakes, requires } = before;
  const { path, placedMs, removedMs } = times;
  state.trains[train] = { code, lengthMm, power, rakes, requires, path, placedMs, removedMs };
  readPath(motions, train, times.path, track);
  runTrain(motions, train);
  const isCut = wasTimed !== motions.timed[train] || changesControl(state, train);
  if (isCut) state.scene = { ...scene, parts: cutIntoParts(state.problem, motions, track) };
  else if (wasTimed === 1) retimeOnlyPart(state, train);
  const others = rechain(state, train);
  if (motions.timed[train] === 1) standTrain(state.problem, motions, stock, train);
  const { parts } = state.scene;
  if (isCut) changeOverBetween(state.problem, motions, stock, parts);
  else changeOverTrain(state.problem, motions, stock, parts, train);
  putTrain(state, train);
  for (const other of others) {
    const stands = standTrain(state.problem, motions, stock, other);
    const changesOver = changeOverTrain(state.problem, motions, stock, parts, other);
    if (stands || changesOver || isCut) putTrain(state, other);
  }
  settlePlan(state);
}

function requireSameCalls(before: readonly PathEntry[], after: readonly PathEntry[]): void {
  let isSame = before.length === after.length;
  for (let i = 0; i < before.length && isSame; i++) {
    const old = before[i] as PathEntry;
    const now = after[i] as PathEntry;
    isSame = old.section === now.section && isTimed(old) === isTimed(now);
  }
  if (!isSame)
    throw new RangeError("a move changes times only, not the sections or which of them have times");
}

function isTimed({ arriveMs, departMs }: PathEntry): boolean {
  return arriveMs !== null || departMs !== null;
}

/** Whether its path has both analog and digital sections, so that its parts may be others now. */
function changesControl({ scene }: PlanState, train: number): boolean {
  const { motions, track } = scene;
  let seen = 0;
  for (let row = motions.firstRow[train] as number; row < (motions.firstRow[train + 1] as number); row++)
    seen |= track.forces[motions.section[row] as number] as number;
  return (seen & ANALOG) !== 0 && (seen & DIGITAL) !== 0;
}

function retimeOnlyPart({ scene: { parts, motions } }: PlanState, train: number): void {
  const part = parts.firstPart[train] as number;
  parts.departMs[part] = firstDeparture(motions, train);
  parts.arriveMs[part] = lastArrival(motions, train);
}

/** Puts the workings of the train's stock in order anew. @returns the timed trains next to it, before or now */
function rechain({ scene, workings }: PlanState, train: number): number[] {
  const { motions, stock } = scene;
  const others: number[] = [];
  const end = stock.firstItem[train + 1] as number;
  for (let row = stock.firstItem[train] as number; row < end; row++) {
    noteOther(others, stock.previous[row] as number);
    noteOther(others, stock.next[row] as number);
    chainItem(workings, motions, stock, stock.item[row] as number);
    noteOther(others, stock.previous[row] as number);
    noteOther(others, stock.next[row] as number);
  }
  return others;
}

function noteOther(others: number[], train: number): void {
  if (train >= 0 && !others.includes(train)) others.push(train);
}

function verdictOf({ problem, lists, crowds, lined }: PlanState): Verdict {
  const { level } = lined;
  const supplies = problem.districts.length;
  const systems = supplies + problem.supplies.length;
  return {
    clashes: lists.clashes,
    crowds: crowds.total(),
    districtsTripping: countLevel(level, 2, 0, supplies),
    districtsClose: countLevel(level, 1, 0, supplies),
    suppliesOver: countLevel(level, 2, supplies, systems),
    suppliesClose: countLevel(level, 1, supplies, systems),
    systemsShort: countLevel(level, 2, systems, level.length),
  };
}

function countLevel(levels: Uint8Array, wanted: number, from: number, to: number): number {
  let count = 0;
  for (let i = from; i < to; i++) if (levels[i] === wanted) count++;
  return count;
}
