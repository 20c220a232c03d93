import type { Problem, Train } from "../../src/planner/problem.ts";
import { controlOf, isDigital } from "./control.ts";
import { type Journey, journey, leavesPoint, moving, reachesPoint, runsBackwards } from "./journey.ts";
import { itemPutDown, itemStandsTo } from "./stock.ts";

/**
 * Digital load, millisecond by millisecond: what every locomotive and lit rake then draws, and from which
 * districts.
 */

/** One locomotive or rake of a train: what of the train's length it takes up, from the head, and what it draws. */
interface Piece {
  readonly item: string;
  readonly frontMm: number;
  readonly rearMm: number;
  readonly runningMa: number;
  readonly standingMa: number;
}

export interface Draw {
  readonly train: number;
  /** `loco 3`, `rake 0`. */
  readonly item: string;
  readonly ma: number;
}

/** Who draws what from each district in one millisecond: `draws(ms)[district]`. */
export function createLoadSampler(problem: Problem): (ms: number) => Draw[][] {
  const trains = problem.trains.flatMap((train, index) =>
    runsBackwards(train) ? [] : [createTrainSampler(problem, train, index)],
  );
  return (ms) => {
    const draws: Draw[][] = problem.districts.map(() => []);
    for (const sample of trains) for (const { district, ...draw } of sample(ms)) draws[district]?.push(draw);
    return draws;
  };
}

function createTrainSampler(problem: Problem, train: Train, index: number) {
  const way = journey(problem, train);
  const stretches = controlOf(problem, index);
  const pieces = piecesOf(problem, train).map((piece) => ({
    ...piece,
    fromMs: itemPutDown(problem, piece.item, index) ?? way.startMs,
    toMs: itemStandsTo(problem, piece.item, index),
    stays: staysOf(way, piece),
  }));
  return (ms: number) => {
    const draws: (Draw & { district: number })[] = [];
    for (const piece of pieces) {
      if (ms < piece.fromMs || ms >= piece.toMs) continue;
      const districts = new Set<number>();
      for (const [entry, stay] of piece.stays.entries()) {
        const section = train.path[entry]?.section as number;
        const within = ms >= stay.fromMs && ms < stay.toMs;
        if (within && isDigital(problem, stretches, entry, ms)(section))
          districts.add(problem.sections[section]?.district ?? -1);
      }
      const ma = ms >= way.startMs && ms < way.endMs && moving(way, ms) ? piece.runningMa : piece.standingMa;
      for (const district of districts)
        if (district >= 0) draws.push({ district, train: index, item: piece.item, ma });
    }
    return draws;
  };
}

/** When the piece is in each entry's section. It is in the first from the start, even if it hangs out behind. */
function staysOf(way: Journey, piece: Piece) {
  return way.train.path.map((_, entry) => ({
    fromMs:
      entry === 0
        ? Number.NEGATIVE_INFINITY
        : (leavesPoint(way, (way.begins[entry] as number) + piece.frontMm) ?? Number.POSITIVE_INFINITY),
    toMs: reachesPoint(way, (way.ends[entry] as number) + piece.rearMm) ?? Number.POSITIVE_INFINITY,
  }));
}

function piecesOf(problem: Problem, train: Train): Piece[] {
  const locomotive = (index: number) => problem.locomotives[index] as Problem["locomotives"][number];
  const pieces: Piece[] = [];
  let fromHead = 0;
  for (const power of train.power.filter(({ atRear }) => !atRear)) {
    const { lengthMm, runningMa, standingMa } = locomotive(power.locomotive);
    pieces.push({
      item: `loco ${power.locomotive}`,
      frontMm: fromHead,
      rearMm: fromHead + lengthMm,
      runningMa,
      standingMa,
    });
    fromHead += lengthMm;
  }
  // at the rear too the first listed is ahead of the others, the last at the very end
  const rear = train.power.filter(({ atRear }) => atRear);
  let fromRear = rear.reduce((mm, power) => mm - locomotive(power.locomotive).lengthMm, train.lengthMm);
  for (const power of rear) {
    const { lengthMm, runningMa, standingMa } = locomotive(power.locomotive);
    pieces.push({
      item: `loco ${power.locomotive}`,
      frontMm: fromRear,
      rearMm: fromRear + lengthMm,
      runningMa,
      standingMa,
    });
    fromRear += lengthMm;
  }
  for (const rake of new Set(train.rakes)) {
    const ma = problem.rakes[rake]?.lightingMa ?? 0;
    pieces.push({ item: `rake ${rake}`, frontMm: 0, rearMm: train.lengthMm, runningMa: ma, standingMa: ma });
  }
  return pieces;
}
