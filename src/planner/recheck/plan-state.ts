import { compilePlan } from "../compile-plan.ts";
import { addTrainNeeds, createNeeds, type Needs } from "../handsets/handset-need.ts";
import { addTrainLoad, createLoadScene, type LoadScene } from "../load/digital-load.ts";
import { type Motions, STANDS } from "../motion/motions.ts";
import type { Problem, Train } from "../problem.ts";
import { createStepEvents, type StepEvents } from "../steps/step-events.ts";
import { type CrowdCount, createCrowdCount } from "./crowd-count.ts";
import { changeLoad, createLinedSteps, judgeChanged, type LinedSteps } from "./lined-steps.ts";
import { createSectionLists, type SectionLists, setBlocked } from "./section-lists.ts";
import { changeStep } from "./sliced-steps.ts";
import { listWorkings, type Workings } from "./workings.ts";

/** A plan that trains are moved in, and all that is known of it. What it holds changes with every move. */
export interface PlanState {
  /** Of the plan as it is now: `trains` is this state's own. */
  readonly problem: Problem;
  readonly trains: Train[];
  /** Motions, stock, parts, track. */
  scene: LoadScene;
  readonly workings: Workings;
  readonly lists: SectionLists;
  readonly lined: LinedSteps;
  readonly crowds: CrowdCount;
  /** By train, what it has put into `lined`. */
  readonly loads: readonly PutLoads[];
  readonly needs: readonly PutNeeds[];
  /** Overwritten train by train. */
  readonly events: StepEvents;
  readonly wanted: Needs;
}

/** Changes of districts' loads; only the first `count` places hold, so that the lists need not shrink. */
interface PutLoads {
  count: number;
  readonly district: number[];
  readonly ms: number[];
  readonly ma: number[];
}

interface PutNeeds {
  count: number;
  readonly system: number[];
  readonly fromMs: number[];
  readonly toMs: number[];
}

export function openPlan(given: Problem): PlanState {
  const trains = [...given.trains];
  const problem = { ...given, trains };
  const scene = createLoadScene(compilePlan(problem));
  const { motions, stock } = scene;
  const state: PlanState = {
    problem,
    trains,
    scene,
    workings: listWorkings(stock, problem.locomotives.length + problem.rakes.length),
    lists: createSectionLists(motions, problem.sections.length),
    lined: createLinedSteps(problem, expectedSteps(problem, motions)),
    crowds: createCrowdCount(problem.sections),
    loads: trains.map(() => ({ count: 0, district: [], ms: [], ma: [] })),
    needs: trains.map(() => ({ count: 0, system: [], fromMs: [], toMs: [] })),
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
  const { motions, stock } = scene;
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
    const changes = setBlocked(lists, scene, row, from, isTimed ? to : from);
    if (changes) crowds.note(motions.section[row] as number);
  }
}

function putLoads({ scene, lined, loads, events }: PlanState, train: number): void {
  events.count = 0;
  if (scene.motions.timed[train] === 1) addTrainLoad(scene, events, train);
  const put = loads[train] as PutLoads;
  const both = Math.min(put.count, events.count);
  for (let i = 0; i < both; i++) {
    const isSame =
      put.district[i] === events.key[i] && put.ms[i] === events.ms[i] && put.ma[i] === events.change[i];
    if (isSame) continue;
    changeLoad(lined, put.district[i] as number, put.ms[i] as number, -(put.ma[i] as number));
    putLoad(lined, put, i, events);
  }
  for (let i = both; i < put.count; i++)
    changeLoad(lined, put.district[i] as number, put.ms[i] as number, -(put.ma[i] as number));
  for (let i = both; i < events.count; i++) putLoad(lined, put, i, events);
  put.count = events.count;
}

function putLoad(lined: LinedSteps, put: PutLoads, at: number, { key, ms, change }: StepEvents): void {
  put.district[at] = key[at] as number;
  put.ms[at] = ms[at] as number;
  put.ma[at] = change[at] as number;
  changeLoad(lined, key[at] as number, ms[at] as number, change[at] as number);
}

function putNeeds({ problem, scene, lined, needs, wanted }: PlanState, train: number): void {
  const firstSystem = problem.districts.length + problem.supplies.length;
  wanted.count = 0;
  if (scene.motions.timed[train] === 1) addTrainNeeds(scene, wanted, train);
  const put = needs[train] as PutNeeds;
  const most = Math.max(put.count, wanted.count);
  for (let i = 0; i < most; i++) {
    const isPut = i < put.count;
    const isWanted = i < wanted.count;
    const system = wanted.system[i] as number;
    const fromMs = wanted.fromMs[i] as number;
    const toMs = wanted.toMs[i] as number;
    const isSame = put.system[i] === system && put.fromMs[i] === fromMs && put.toMs[i] === toMs;
    if (isPut && isWanted && isSame) continue;
    if (isPut) changeNeed(lined, firstSystem, put, i, -1);
    if (!isWanted) continue;
    put.system[i] = system;
    put.fromMs[i] = fromMs;
    put.toMs[i] = toMs;
    changeNeed(lined, firstSystem, put, i, 1);
  }
  put.count = wanted.count;
}

function changeNeed({ steps }: LinedSteps, firstSystem: number, put: PutNeeds, at: number, by: 1 | -1): void {
  const of = firstSystem + (put.system[at] as number);
  changeStep(steps, of, put.fromMs[at] as number, by);
  changeStep(steps, of, put.toMs[at] as number, -by);
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
