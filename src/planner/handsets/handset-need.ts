import type { Parts } from "../control/parts.ts";
import type { Motions } from "../motion/motions.ts";
import type { Problem } from "../problem.ts";
import { addStep, createStepEvents, type StepEvents } from "../steps/step-events.ts";
import type { Track } from "../track/track.ts";

/** What it takes to say which handsets a train needs when. */
export interface NeedScene {
  readonly problem: Problem;
  readonly motions: Motions;
  readonly parts: Parts;
  readonly track: Track;
  /** Need of the train at hand that is not written down yet, by command system; `openTo` below `openFrom`: none. */
  readonly openFrom: Int32Array;
  readonly openTo: Int32Array;
}

export function createNeedScene(problem: Problem, motions: Motions, parts: Parts, track: Track): NeedScene {
  const systems = problem.commandSystems.length;
  return {
    problem,
    motions,
    parts,
    track,
    openFrom: new Int32Array(systems),
    openTo: new Int32Array(systems).fill(-1),
  };
}

/**
 * Which trains need a handset of which command system when, as changes by one. For each digital part of a working and
 * each command system that drives it: from pickUp before the part's departure to handIn after its arrival. A train
 * never needs two of a system at once. Keys of the events are command systems. Cost: linear in path entries.
 */
export function handsetNeed(scene: NeedScene): StepEvents {
  const events = createStepEvents(2 * scene.motions.timed.length);
  for (let train = 0; train < scene.motions.timed.length; train++) addTrainNeed(scene, events, train);
  return events;
}

/** Nothing for a train that is not timed. */
export function addTrainNeed(scene: NeedScene, events: StepEvents, train: number): void {
  const { parts, openFrom } = scene;
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++)
    if (parts.analog[part] === 0) openPart(scene, events, train, part);
  for (let system = 0; system < openFrom.length; system++) closeNeed(scene, events, train, system);
}

function openPart(scene: NeedScene, events: StepEvents, train: number, part: number): void {
  const { motions, parts, track, openFrom, openTo } = scene;
  const { pickUpMs, handInMs } = scene.problem.policy;
  const fromMs = (parts.departMs[part] as number) - pickUpMs;
  const toMs = (parts.arriveMs[part] as number) + handInMs;
  const row = motions.firstRow[train] as number;
  const last = row + (parts.lastEntry[part] as number);
  let before = -1;
  for (let at = row + (parts.firstEntry[part] as number); at <= last; at++) {
    const system = track.commandSystem[motions.section[at] as number] as number;
    if (system < 0 || system === before) continue;
    before = system;
    // the one who hands in so late keeps it
    if (fromMs > (openTo[system] as number)) closeNeed(scene, events, train, system);
    if ((openTo[system] as number) < (openFrom[system] as number)) openFrom[system] = fromMs;
    openTo[system] = toMs;
  }
}

function closeNeed({ openFrom, openTo }: NeedScene, events: StepEvents, train: number, system: number): void {
  const fromMs = openFrom[system] as number;
  const toMs = openTo[system] as number;
  if (toMs < fromMs) return;
  addStep(events, system, fromMs, 1, train);
  addStep(events, system, toMs, -1, train);
  openFrom[system] = 0;
  openTo[system] = -1;
}
