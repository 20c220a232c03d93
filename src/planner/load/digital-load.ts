import type { Parts } from "../control/parts.ts";
import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { Locomotive, MotivePower, Problem, Rake, Train } from "../problem.ts";
import { createStepEvents, putStep, reserveSteps, type StepEvents } from "../steps/step-events.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import type { Track } from "../track/track.ts";
import { createMoves, findMoves, type Moves } from "./moves.ts";
import { createPresence, findPresence, type Item, type Presence } from "./presence.ts";
import { createStretches, findStretches, type Stretches } from "./stretches.ts";

/** What it takes to say what a train draws from the districts. */
export interface LoadScene {
  readonly problem: Problem;
  readonly motions: Motions;
  readonly stock: StockPlan;
  readonly parts: Parts;
  readonly track: Track;
  /** Overwritten train by train. */
  readonly stretches: Stretches;
  readonly presence: Presence;
  readonly moves: Moves;
}

export function createLoadScene(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  parts: Parts,
  track: Track,
): LoadScene {
  const stretches = createStretches(motions);
  return {
    problem,
    motions,
    stock,
    parts,
    track,
    stretches,
    presence: createPresence(stretches, problem.districts.length),
    moves: createMoves(motions),
  };
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
  findStretches(scene.stretches, scene.motions, scene.parts, scene.track.district, train);
  findMoves(scene.moves, scene.motions, train);
  const end = stock.firstItem[train + 1] as number;
  let row = stock.firstItem[train] as number;
  let headMm = 0;
  let rearMm = lengthMm - rearPowerMm(problem, power);
  for (let i = 0; i < power.length; i++) {
    const { locomotive, atRear } = power[i] as MotivePower;
    if (row === end || stock.item[row] !== locomotive) continue;
    const engine = problem.locomotives[locomotive] as Locomotive;
    const frontMm = atRear ? rearMm : headMm;
    addItem(scene, events, train, row, frontMm, engine.lengthMm, engine.runningMa, engine.standingMa);
    if (atRear) rearMm += engine.lengthMm;
    else headMm += engine.lengthMm;
    row++;
  }
  for (let i = 0; i < rakes.length; i++) {
    const rake = rakes[i] as number;
    if (row === end || stock.item[row] !== problem.locomotives.length + rake) continue;
    const { lightingMa } = problem.rakes[rake] as Rake;
    addItem(scene, events, train, row, 0, lengthMm, lightingMa, lightingMa);
    row++;
  }
}

function rearPowerMm({ locomotives }: Problem, power: readonly MotivePower[]): number {
  let mm = 0;
  for (let i = 0; i < power.length; i++) {
    const { locomotive, atRear } = power[i] as MotivePower;
    if (atRear) mm += (locomotives[locomotive] as Locomotive).lengthMm;
  }
  return mm;
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
  drawFrom(scene, events, item, train);
}

/**
 * What the item draws from each district while it is there: a step in, one wherever the train stops or goes on, one
 * out. Nothing before the slot's start.
 */
function drawFrom(scene: LoadScene, events: StepEvents, item: Item, train: number): void {
  const { presence, moves } = scene;
  const { startMs } = scene.problem.slot;
  const { runningMa, standingMa } = item;
  reserveSteps(events, presence.count * (2 * moves.count + 2));
  for (let i = 0; i < presence.count; i++) {
    const district = presence.district[i] as number;
    const fromMs = Math.max(presence.fromMs[i] as number, startMs);
    const untilMs = presence.toMs[i] as number;
    if (fromMs >= untilMs) continue;
    let move = 0;
    while (move < moves.count && (moves.toMs[move] as number) <= fromMs) move++;
    let drawn = move < moves.count && (moves.fromMs[move] as number) <= fromMs ? runningMa : standingMa;
    putStep(events, district, fromMs, drawn, train);
    for (; move < moves.count && runningMa !== standingMa; move++) {
      const goesMs = moves.fromMs[move] as number;
      const stopsMs = moves.toMs[move] as number;
      if (goesMs >= untilMs) break;
      if (goesMs > fromMs) putStep(events, district, goesMs, runningMa - standingMa, train);
      drawn = stopsMs < untilMs ? standingMa : runningMa;
      if (stopsMs >= untilMs) break;
      putStep(events, district, stopsMs, standingMa - runningMa, train);
    }
    putStep(events, district, untilMs, -drawn, train);
  }
}
