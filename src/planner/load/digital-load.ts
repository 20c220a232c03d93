import type { Plan } from "../compile-plan.ts";
import { createStepEvents, putStep, reserveSteps, type StepEvents } from "../steps/step-events.ts";
import { createMoves, findMoves, type Moves } from "./moves.ts";
import { createPresence, findPresence, type Presence } from "./presence.ts";
import { createStretches, findStretches, keepStretches, type Stretches } from "./stretches.ts";

/** A plan, and room for what is found out train by train: stretches, presence and moves are overwritten. */
export interface LoadScene extends Plan {
  readonly stretches: Stretches;
  readonly presence: Presence;
  readonly moves: Moves;
}

export function createLoadScene({ problem, track, motions, stock, parts }: Plan): LoadScene {
  const stretches = createStretches(motions);
  const presence = createPresence(stretches, problem.districts.length);
  return { problem, track, motions, stock, parts, stretches, presence, moves: createMoves(motions) };
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

/** One timed train. `wantedBy`, if given, limits it to districts for which it holds the train's index. */
export function addTrainLoad(
  scene: LoadScene,
  events: StepEvents,
  train: number,
  wantedBy?: Int32Array,
): void {
  const { motions, stock, stretches } = scene;
  findStretches(stretches, motions, scene.parts, scene.track.district, train);
  if (wantedBy !== undefined) keepStretches(stretches, wantedBy, train);
  findMoves(scene.moves, motions, train);
  const end = stock.firstItem[train + 1] as number;
  for (let item = stock.firstItem[train] as number; item < end; item++) {
    if (stock.runningMa[item] === 0 && stock.standingMa[item] === 0) continue;
    findPresence(scene.presence, motions, stretches, stock, item);
    drawFrom(scene, events, item, train);
  }
}

/**
 * What the item draws from each district while it is there: a step in, one wherever the train stops or goes on, one
 * out. Nothing before the slot's start.
 */
function drawFrom(scene: LoadScene, events: StepEvents, item: number, train: number): void {
  const { presence, moves } = scene;
  const { startMs } = scene.problem.slot;
  const runningMa = scene.stock.runningMa[item] as number;
  const standingMa = scene.stock.standingMa[item] as number;
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
