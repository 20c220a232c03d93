import { firstDeparture, lastArrival, STANDS } from "../motion/motions.ts";
import {
  createRoughSteps,
  putRough,
  type RoughSteps,
  reserveRough,
  type Slices,
} from "../steps/rough-steps.ts";
import type { LoadScene } from "./digital-load.ts";
import { findStretches } from "./stretches.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;

/** Rough steps by district; those of train t are rows `firstRow[t]` to before `firstRow[t + 1]`. */
export interface RoughLoad {
  readonly steps: RoughSteps;
  readonly firstRow: Int32Array;
}

/**
 * No less than every train draws, cheaply: while any of it is in a district it is taken to draw all that it ever does
 * there, before and after its run all that it draws at a stand. Cost: linear in path entries.
 */
export function roughLoad(scene: LoadScene, slices: Slices): RoughLoad {
  const { timed } = scene.motions;
  const steps = createRoughSteps(slices, 6 * timed.length + 16);
  const firstRow = new Int32Array(timed.length + 1);
  for (let train = 0; train < timed.length; train++) {
    if (timed[train] === 1) addTrain(scene, steps, train);
    firstRow[train + 1] = steps.count;
  }
  return { steps, firstRow };
}

function addTrain(scene: LoadScene, steps: RoughSteps, train: number): void {
  const { motions, stock, stretches } = scene;
  const sliceMs = 1 / steps.slices.perMs;
  const { standing, running } = mostDrawn(scene, train);
  if (running === 0) return;
  const departs = firstDeparture(motions, train);
  const arrives = lastArrival(motions, train);
  const standFrom = stock.standFromMs[train] as number;
  const standTo = stock.standToMs[train] as number;
  const pathRow = motions.firstRow[train] as number;
  findStretches(stretches, motions, scene.parts, scene.track.district, train);
  reserveRough(steps, 3 * stretches.count);
  for (let i = 0; i < stretches.count; i++) {
    const district = stretches.district[i] as number;
    const startsIn = stretches.firstRow[i] === pathRow;
    const clear = motions.clearMs[stretches.lastRow[i] as number] as number;
    let from = startsIn ? departs : (motions.enterMs[stretches.firstRow[i] as number] as number);
    let to = clear === NEVER ? arrives : clear;
    // a stand shorter than a slice is not worth a row of its own
    if (startsIn && departs - standFrom < sliceMs) from = standFrom;
    else if (startsIn) putRough(steps, district, standFrom, departs, standing);
    if (clear === NEVER && standTo - arrives < sliceMs) to = standTo;
    else if (clear === NEVER) putRough(steps, district, arrives, standTo, standing);
    putRough(steps, district, from, to, running);
  }
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
