import type { Parts } from "../control/parts.ts";
import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { Locomotive, Problem, Rake, Section, Train } from "../problem.ts";
import { addStep, createStepEvents, type StepEvents } from "../steps/step-events.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { createPresence, findPresence, type Item, type Presence } from "./presence.ts";
import { createStretches, findStretches, type Stretches } from "./stretches.ts";

/** What it takes to say what a train draws from the districts. */
export interface LoadScene {
  readonly problem: Problem;
  readonly motions: Motions;
  readonly stock: StockPlan;
  readonly parts: Parts;
  /** District of each section, −1 where none feeds a digital train in it. */
  readonly districtOf: Int32Array;
  /** Overwritten train by train. */
  readonly stretches: Stretches;
  readonly presence: Presence;
}

export function createLoadScene(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  parts: Parts,
): LoadScene {
  const stretches = createStretches(motions);
  return {
    problem,
    motions,
    stock,
    parts,
    districtOf: Int32Array.from(problem.sections, feedingDistrict),
    stretches,
    presence: createPresence(stretches, problem.districts.length),
  };
}

/** District that feeds a digital train in the section, −1: none. */
export function feedingDistrict({ control, district }: Section): number {
  return control === "digital" || control === "changeover" ? district : -1;
}

/**
 * What every train draws from the power districts, as changes of each district's load: its locomotives' running
 * current while it moves and standing current otherwise, its rakes' lighting, in every district in which any part of
 * the item is. No set-up, no release; nothing before the slot's start. Cost: items × path entries.
 */
export function digitalLoad(scene: LoadScene): StepEvents {
  const events = createStepEvents(scene.motions.section.length);
  for (let train = 0; train < scene.problem.trains.length; train++)
    if (scene.motions.timed[train] === 1) addTrainLoad(scene, events, train);
  return events;
}

/**
 * One timed train. Locomotives at the head stand one behind the other in list order from the front, those at the rear
 * too, the last listed at the very end. A rake counts wherever the train is.
 */
export function addTrainLoad(scene: LoadScene, events: StepEvents, train: number): void {
  const { problem, stock } = scene;
  const { power, rakes, lengthMm } = problem.trains[train] as Train;
  findStretches(scene.stretches, scene.motions, scene.parts, scene.districtOf, train);
  const end = stock.firstItem[train + 1] as number;
  let row = stock.firstItem[train] as number;
  let headMm = 0;
  let rearMm = lengthMm;
  for (const { locomotive, atRear } of power)
    if (atRear) rearMm -= (problem.locomotives[locomotive] as Locomotive).lengthMm;
  for (const { locomotive, atRear } of power) {
    if (row === end || stock.item[row] !== locomotive) continue;
    const { lengthMm, runningMa, standingMa } = problem.locomotives[locomotive] as Locomotive;
    addItem(scene, events, train, row, atRear ? rearMm : headMm, lengthMm, runningMa, standingMa);
    if (atRear) rearMm += lengthMm;
    else headMm += lengthMm;
    row++;
  }
  for (const rake of rakes) {
    if (row === end || stock.item[row] !== problem.locomotives.length + rake) continue;
    const { lightingMa } = problem.rakes[rake] as Rake;
    addItem(scene, events, train, row, 0, lengthMm, lightingMa, lightingMa);
    row++;
  }
}

/**
 * An item between two workings is drawn for once: the earlier one answers for it until the next departs. Before a
 * working it counts only where nothing brought it.
 */
function addItem(
  scene: LoadScene,
  events: StepEvents,
  train: number,
  row: number,
  frontMm: number,
  lengthMm: number,
  runningMa: number,
  standingMa: number,
): void {
  if (runningMa === 0 && standingMa === 0) return;
  const { motions, stock, presence } = scene;
  const { slot } = scene.problem;
  const { placedMs, removedMs } = scene.problem.trains[train] as Train;
  const departs = firstDeparture(motions, train);
  const next = stock.next[row] as number;
  const brought = (stock.previous[row] as number) >= 0;
  const toMs = next < 0 ? (removedMs ?? slot.endMs) : firstDeparture(motions, next);
  const item: Item = {
    frontMm,
    lengthMm,
    runningMa,
    standingMa,
    fromMs: brought ? departs : Math.min(departs, placedMs ?? slot.startMs),
    toMs: Math.max(toMs, lastArrival(motions, train)),
  };
  findPresence(presence, motions, scene.stretches, item, train);
  for (let i = 0; i < presence.count; i++) {
    const fromMs = Math.max(presence.fromMs[i] as number, slot.startMs);
    const untilMs = presence.toMs[i] as number;
    if (fromMs < untilMs)
      drawFrom(scene, events, item, train, presence.district[i] as number, fromMs, untilMs);
  }
}

/** What the item draws from one district while it is there: a step in, one wherever the train stops or goes on, one out. */
function drawFrom(
  { motions }: LoadScene,
  events: StepEvents,
  item: Item,
  train: number,
  district: number,
  fromMs: number,
  untilMs: number,
): void {
  const { arriveMs, departMs } = motions;
  const last = (motions.firstCall[train + 1] as number) - 1;
  let call = motions.firstCall[train] as number;
  while (call < last && (arriveMs[call + 1] as number) <= fromMs) call++;
  let moves = call < last && (departMs[call] as number) <= fromMs;
  const { runningMa, standingMa } = item;
  addStep(events, district, fromMs, moves ? runningMa : standingMa, train);
  while (runningMa !== standingMa) {
    const ms = moves ? (arriveMs[call + 1] as number) : (departMs[call] as number);
    if (ms >= untilMs || (!moves && call === last)) break;
    if (moves) call++;
    // a pass: it does not stop
    if (moves && call < last && departMs[call] === ms) continue;
    moves = !moves;
    addStep(events, district, ms, moves ? runningMa - standingMa : standingMa - runningMa, train);
  }
  addStep(events, district, untilMs, moves ? -runningMa : -standingMa, train);
}
