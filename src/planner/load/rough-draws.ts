import { firstDeparture, lastArrival, STANDS } from "../motion/motions.ts";
import type { Interval } from "../problem.ts";
import type { LoadScene } from "./digital-load.ts";
import { findStretches } from "./stretches.ts";

/**
 * No less than every train draws, cheaply: while any of it is in a district it is taken to draw all that it ever does
 * there, before and after its run all that it draws at a stand. Columns of one place a draw, train after train: those
 * of train t are `firstDraw[t]` to before `firstDraw[t + 1]`. Time in equal slices of the loads' span.
 */
export interface RoughDraws {
  readonly slices: Slices;
  readonly firstDraw: Int32Array;
  count: number;
  district: Int32Array;
  /** Both included. */
  firstSlice: Int32Array;
  lastSlice: Int32Array;
  ma: Int32Array;
}

/** `count` slices of `lengthMs` from `startMs` on; what is outside counts with the first or last. */
export interface Slices {
  readonly startMs: number;
  readonly count: number;
  readonly lengthMs: number;
}

/** As many slices as path entries, over all districts: a slice is about as long as a train is in one section. */
export function cutSlices(span: Interval, districts: number, rows: number): Slices {
  const count = 8 + Math.ceil(rows / Math.max(1, districts));
  return { startMs: span.startMs, count, lengthMs: Math.max(1, (span.endMs - span.startMs) / count) };
}

/** Cost: linear in path entries. */
export function roughDraws(scene: LoadScene, slices: Slices): RoughDraws {
  const { timed } = scene.motions;
  const capacity = 6 * timed.length + 16;
  const draws: RoughDraws = {
    slices,
    firstDraw: new Int32Array(timed.length + 1),
    count: 0,
    district: new Int32Array(capacity),
    firstSlice: new Int32Array(capacity),
    lastSlice: new Int32Array(capacity),
    ma: new Int32Array(capacity),
  };
  for (let train = 0; train < timed.length; train++) {
    if (timed[train] === 1) addTrain(scene, draws, train);
    draws.firstDraw[train + 1] = draws.count;
  }
  return draws;
}

function addTrain(scene: LoadScene, draws: RoughDraws, train: number): void {
  const { motions, stock, stretches } = scene;
  const { lengthMs } = draws.slices;
  const { standing, running } = mostDrawn(scene, train);
  if (running === 0) return;
  const departs = firstDeparture(motions, train);
  const arrives = lastArrival(motions, train);
  const standFrom = stock.standFromMs[train] as number;
  const standTo = stock.standToMs[train] as number;
  const pathRow = motions.firstRow[train] as number;
  findStretches(stretches, motions, scene.parts, scene.track.district, train);
  if (draws.count + 3 * stretches.count > draws.district.length) grow(draws, 3 * stretches.count);
  for (let i = 0; i < stretches.count; i++) {
    const district = stretches.district[i] as number;
    const startsIn = stretches.firstRow[i] === pathRow;
    const clear = motions.clearMs[stretches.lastRow[i] as number] as number;
    let from = startsIn ? departs : (motions.enterMs[stretches.firstRow[i] as number] as number);
    let to = clear === STANDS ? arrives : clear;
    // a stand shorter than a slice is not worth a draw of its own
    if (startsIn && departs - standFrom < lengthMs) from = standFrom;
    else if (startsIn) addDraw(draws, district, standFrom, departs, standing);
    if (clear === STANDS && standTo - arrives < lengthMs) to = standTo;
    else if (clear === STANDS) addDraw(draws, district, arrives, standTo, standing);
    addDraw(draws, district, from, to, running);
  }
}

function addDraw(draws: RoughDraws, district: number, fromMs: number, toMs: number, ma: number): void {
  const { startMs, count, lengthMs } = draws.slices;
  const at = draws.count++;
  draws.district[at] = district;
  draws.firstSlice[at] = Math.min(count - 1, Math.max(0, Math.floor((fromMs - startMs) / lengthMs)));
  draws.lastSlice[at] = Math.min(count - 1, Math.max(0, Math.floor((toMs - startMs) / lengthMs)));
  draws.ma[at] = ma;
}

function mostDrawn({ stock }: LoadScene, train: number): { standing: number; running: number } {
  const end = stock.firstItem[train + 1] as number;
  let standing = 0;
  let running = 0;
  for (let item = stock.firstItem[train] as number; item < end; item++) {
    const stands = stock.standingMa[item] as number;
    standing += stands;
    running += Math.max(stands, stock.runningMa[item] as number);
  }
  return { standing, running };
}

function grow(draws: RoughDraws, more: number): void {
  const capacity = 2 * draws.district.length + more;
  const enlarge = (column: Int32Array) => {
    const larger = new Int32Array(capacity);
    larger.set(column);
    return larger;
  };
  draws.district = enlarge(draws.district);
  draws.firstSlice = enlarge(draws.firstSlice);
  draws.lastSlice = enlarge(draws.lastSlice);
  draws.ma = enlarge(draws.ma);
}
