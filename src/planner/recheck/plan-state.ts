import { cutIntoParts } from "../control/cut-into-parts.ts";
import { addTrainNeeds, createNeeds, type NeedScene, type Needs } from "../handsets/handset-need.ts";
import { addTrainLoad, createLoadScene, type LoadScene } from "../load/digital-load.ts";
import { computeMotions } from "../motion/compute-motions.ts";
import { type Motions, STANDS } from "../motion/motions.ts";
import type { Problem, Train } from "../problem.ts";
import { createStepEvents, type StepEvents } from "../steps/step-events.ts";
import { planStock } from "../stock/plan-stock.ts";
import { tabulateTrack } from "../track/track.ts";
import { type CrowdCount, createCrowdCount } from "./crowd-count.ts";
import { changeLoad, changeNeed, createLinedSteps, judgeChanged, type LinedSteps } from "./lined-steps.ts";
import { createSectionLists, type SectionLists, setBlocked } from "./section-lists.ts";
import { listWorkings, type Workings } from "./workings.ts";

/** A plan that trains are moved in, and all that is known of it. What it holds changes with every move. */
export interface PlanState {
  /** Of the plan as it is now: `trains` is this state's own. */
  readonly problem: Problem;
  readonly trains: Train[];
  /** Motions, stock, parts, track. */
  scene: LoadScene & NeedScene;
  readonly workings: Workings;
  readonly lists: SectionLists;
  readonly lined: LinedSteps;
  readonly crowds: CrowdCount;
  /** By train, what it has put into `lined`: district, instant, change; system, from, to. */
  readonly loads: readonly number[][];
  readonly needs: readonly number[][];
  /** Overwritten train by train. */
  readonly events: StepEvents;
  readonly wanted: Needs;
}

export function openPlan(given: Problem): PlanState {
  const trains = [...given.trains];
  const problem = { ...given, trains };
  const track = tabulateTrack(problem);
  const motions = computeMotions(problem, track);
  const stock = planStock(problem, motions);
  const parts = cutIntoParts(problem, motions, track);
  const scene = createLoadScene(problem, motions, stock, parts, track);
  const state: PlanState = {
    problem,
    trains,
    scene,
    workings: listWorkings(stock, problem.locomotives.length + problem.rakes.length),
    lists: createSectionLists(motions, problem.sections.length),
    lined: createLinedSteps(problem, expectedSteps(problem, motions)),
    crowds: createCrowdCount(problem.sections),
    loads: trains.map(() => []),
    needs: trains.map(() => []),
    events: createStepEvents(64),
    wanted: createNeeds(8),
  };
  for (let train = 0; train < trains.length; train++) putTrain(state, train);
  settlePlan(state);
  return state;
}

/** Before: motion, parts and stands of the train are up to date. After: so is all but what `settlePlan` settles. */
export function putTrain(state: PlanState, train: number): void {
  putBlocked(state, train);
  putLoads(state, train);
  putNeeds(state, train);
}

/** Brings peaks and crowds up to date with every train put. */
export function settlePlan({ scene, lists, lined, crowds }: PlanState): void {
  judgeChanged(lined);
  crowds.recount(scene, lists);
}

function putBlocked({ scene, lists, crowds }: PlanState, train: number): void {
  const { motions, stock, track } = scene;
  const { setUpMs, releaseMs } = scene.problem.policy;
  const isTimed = motions.timed[train] === 1;
  const standFromMs = stock.standFromMs[train] as number;
  const standToMs = stock.standToMs[train] as number;
  const end = motions.firstRow[train + 1] as number;
  for (let row = motions.firstRow[train] as number; row < end; row++) {
    const enter = motions.enterMs[row] as number;
    const clear = motions.clearMs[row] as number;
    const from = enter === STANDS ? standFromMs : enter - setUpMs;
    const to = clear === STANDS ? standToMs : clear + releaseMs;
    const changes = setBlocked(lists, motions, stock, track, row, isTimed ? from : 0, isTimed ? to : 0);
    if (changes) crowds.note(motions.section[row] as number);
  }
}

function putLoads({ scene, lined, loads, events }: PlanState, train: number): void {
  events.count = 0;
  if (scene.motions.timed[train] === 1) addTrainLoad(scene, events, train);
  const put = loads[train] as number[];
  const { key, ms, change } = events;
  for (let i = 0, at = 0; i < events.count; i++, at += 3) {
    const same = put[at] === key[i] && put[at + 1] === ms[i] && put[at + 2] === change[i];
    if (same) continue;
    if (at < put.length) takeLoad(lined, put, at);
    put[at] = key[i] as number;
    put[at + 1] = ms[i] as number;
    put[at + 2] = change[i] as number;
    changeLoad(lined, put[at] as number, put[at + 1] as number, put[at + 2] as number);
  }
  for (let at = 3 * events.count; at < put.length; at += 3) takeLoad(lined, put, at);
  if (put.length > 3 * events.count) put.length = 3 * events.count;
}

function takeLoad(lined: LinedSteps, put: readonly number[], at: number): void {
  changeLoad(lined, put[at] as number, put[at + 1] as number, -(put[at + 2] as number));
}

function putNeeds({ problem, scene, lined, needs, wanted }: PlanState, train: number): void {
  const supplies = problem.supplies.length;
  const put = needs[train] as number[];
  wanted.count = 0;
  if (scene.motions.timed[train] === 1) addTrainNeeds(scene, wanted, train);
  const { system, fromMs, toMs, count } = wanted;
  const isSame =
    put.length === 3 * count &&
    put.every((value, at) => value === [system, fromMs, toMs][at % 3]?.[Math.floor(at / 3)]);
  if (isSame) return;
  for (let at = 0; at < put.length; at += 3) changePut(-1, at);
  put.length = 0;
  for (let i = 0; i < count; i++) {
    put.push(system[i] as number, fromMs[i] as number, toMs[i] as number);
    changePut(1, 3 * i);
  }

  function changePut(by: 1 | -1, at: number): void {
    changeNeed(lined, supplies, put[at] as number, put[at + 1] as number, by);
    changeNeed(lined, supplies, put[at] as number, put[at + 2] as number, -by);
  }
}

/** About as many steps as each function will hold: two for every train in every section, two a train and system. */
function expectedSteps({ districts, supplies, commandSystems }: Problem, motions: Motions): Int32Array {
  const share = (of: number) => (2 * motions.section.length) / Math.max(1, of);
  return Int32Array.from([
    ...districts.map(() => share(districts.length)),
    ...supplies.map(() => share(supplies.length)),
    ...commandSystems.map(() => (2 * motions.timed.length) / Math.max(1, commandSystems.length)),
  ]);
}
