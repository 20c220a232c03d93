import type { Problem } from "../../src/planner/problem.ts";
import { type ControlStretch, controlOf } from "./control.ts";
import { type Journey, journey, leavesPoint, reachesPoint, runsBackwards, type Stop } from "./journey.ts";
import { standsFrom, standsTo } from "./stock.ts";

/** A stretch for which a train keeps one output, worked out anew from the raw path. */
export interface PlainRun {
  readonly train: number;
  readonly startMs: number;
  readonly endMs: number;
  /** When it moves, between two stands. */
  readonly departMs: number;
  readonly arriveMs: number;
  /**
   * Sections it is in, and when they are its own; a section once for each time the path names it. `isIn`: whether any of
   * the train is in it then.
   */
  readonly stays: readonly {
    readonly section: number;
    readonly startMs: number;
    readonly endMs: number;
    isIn(ms: number): boolean;
  }[];
  /** Outputs that reach every one of them. */
  readonly candidates: readonly number[];
  readonly enginesMa: number;
  readonly lightingMa: number;
  /** Where it stands on its whole way. */
  readonly stops: readonly Stop[];
}

export function plainRuns(problem: Problem): PlainRun[] {
  return problem.trains
    .flatMap((train, index) => {
      if (runsBackwards(train)) return [];
      const way = journey(problem, train);
      return controlOf(problem, index)
        .filter(({ control }) => control === "analog")
        .flatMap((stretch) => runsOf(problem, way, stretch, index));
    })
    .filter((run) => run.stays.length > 0);
}

function runsOf(problem: Problem, way: Journey, stretch: ControlStretch, index: number): PlainRun[] {
  const { setUpMs, releaseMs, releaseDwellMs, pickUpMs, handInMs } = problem.policy;
  const within = way.stops.filter(
    ({ entry, arriveMs, departMs }) =>
      entry >= stretch.firstEntry &&
      entry <= stretch.lastEntry &&
      departMs >= stretch.departMs &&
      arriveMs <= stretch.arriveMs,
  );
  const releases = within.filter(
    ({ arriveMs, departMs }) =>
      arriveMs > stretch.departMs &&
      departMs < stretch.arriveMs &&
      departMs > arriveMs &&
      departMs - arriveMs >= releaseDwellMs &&
      arriveMs + releaseMs <= departMs - setUpMs,
  );
  // a train comes to the first edge standing, unless its path leads it there without a changeover
  const stands = stretch.firstEntry === 0 || Number.isFinite(stretch.sinceMs);
  const begin = stands ? way.stops.find(({ entry }) => entry === stretch.firstEntry) : undefined;
  const edges: (Stop | undefined)[] = [begin, ...releases, undefined];
  return edges.slice(1).map((to, at) => {
    const from = edges[at];
    const departMs = from?.departMs ?? stretch.departMs;
    const arriveMs = to?.arriveMs ?? stretch.arriveMs;
    const lead = at === 0 ? Math.max(setUpMs, pickUpMs) : setUpMs;
    const lag = at === edges.length - 2 ? Math.max(releaseMs, handInMs) : releaseMs;
    const span = { startMs: departMs - lead, endMs: arriveMs + lag };
    const stays = staysOf(problem, way, index, stretch, { ...span, from, to });
    const reach = stays.map(({ section }) => problem.sections[section]?.outputs ?? []);
    return {
      train: index,
      ...span,
      departMs,
      arriveMs,
      stays,
      candidates: problem.outputs.flatMap((_, output) =>
        reach.every((outputs) => outputs.includes(output)) ? [output] : [],
      ),
      ...drawOf(problem, way),
      stops: way.stops,
    };
  });
}

interface Edges {
  readonly startMs: number;
  readonly endMs: number;
  readonly from: Stop | undefined;
  readonly to: Stop | undefined;
}

function staysOf(problem: Problem, way: Journey, index: number, stretch: ControlStretch, run: Edges) {
  const { setUpMs, releaseMs } = problem.policy;
  return way.train.path.flatMap(({ section }, entry) => {
    if (entry < stretch.firstEntry || entry > (run.to?.entry ?? stretch.lastEntry)) return [];
    if (problem.sections[section]?.control === "dead") return [];
    const tailMm = run.from ? run.from.atMm - way.train.lengthMm : 0;
    const behind = run.from && (way.ends[entry] as number) <= tailMm;
    if (behind && entry < (run.from?.entry ?? 0)) return [];
    const standing = entry === 0 || (run.from !== undefined && entry <= run.from.entry);
    const enters = leavesPoint(way, way.begins[entry] as number);
    const clears = reachesPoint(way, (way.ends[entry] as number) + way.train.lengthMm);
    const there = entry === 0 ? standsFrom(problem, index) : run.startMs;
    const gone = clears === null ? standsTo(problem, index) : clears + releaseMs;
    const startMs = Math.max(run.startMs, standing || enters === null ? there : enters - setUpMs);
    const endMs = Math.min(run.endMs, gone);
    return [
      {
        section,
        startMs: entry === stretch.firstEntry ? Math.max(startMs, stretch.sinceMs) : startMs,
        endMs: entry === stretch.lastEntry ? Math.min(endMs, stretch.untilMs) : endMs,
        isIn: (ms: number) =>
          ms >= (entry === 0 ? there : (enters ?? there)) && ms < (clears ?? standsTo(problem, index)),
      },
    ];
  });
}

function drawOf(problem: Problem, { train }: Journey) {
  const engines = [...new Set(train.power.map(({ locomotive }) => locomotive))];
  const rakes = [...new Set(train.rakes)];
  return {
    enginesMa: engines.reduce((ma, at) => ma + (problem.locomotives[at]?.runningMa ?? 0), 0),
    lightingMa: rakes.reduce((ma, at) => ma + (problem.rakes[at]?.lightingMa ?? 0), 0),
  };
}
