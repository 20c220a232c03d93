import { compilePlan } from "../compile-plan.ts";
import { createLoadScene } from "../load/digital-load.ts";
import { findMoves } from "../load/moves.ts";
import { sweepSurges } from "../load/surges.ts";
import type { Problem } from "../problem.ts";
import { asRun, type Replaced } from "./as-run.ts";

/** A locomotive or a rake (by index, −1: the other) in a district at an instant, and what it is taken to draw. */
export interface Drawing {
  readonly locomotive: number;
  readonly rake: number;
  /** Whether it moves then, whatever it draws. */
  readonly state: "running" | "standing";
  readonly ma: number;
}

type WhoDraws = (district: number, ms: number) => Drawing[];

/**
 * Who is in a district at an instant, by the plan and by what took the place of failed locomotives before. Cost: once for
 * each replacement that an instant lies behind, that of the surges of the whole plan; then linear in the district's events
 * and the calls of the trains there.
 */
export function createWhoDraws(problem: Problem, replaced: readonly Replaced[] = []): WhoDraws {
  const inOrder = [...replaced].sort((a, b) => a.atMs - b.atMs);
  const known = new Map<number, WhoDraws>();
  return (district, ms) => {
    const inForce = inOrder.filter(({ atMs }) => atMs <= ms);
    const whoDraws = known.get(inForce.length) ?? whoDrawsAfter(problem, inForce);
    known.set(inForce.length, whoDraws);
    return whoDraws(district, ms);
  };
}

function whoDrawsAfter(planned: Problem, inForce: readonly Replaced[]): WhoDraws {
  const { problem, isOffTrack } = asRun(planned, inForce);
  const scene = createLoadScene(compilePlan(problem));
  const sweep = sweepSurges(scene);
  const engines = problem.locomotives.length;
  const { item: items, firstItem } = scene.stock;
  const trainOf = (row: number) =>
    firstItem.findLastIndex((first, train) => first <= row && train < problem.trains.length);
  const moves = (train: number, ms: number) => {
    findMoves(scene.moves, scene.motions, train);
    const { count, fromMs, toMs } = scene.moves;
    return fromMs.subarray(0, count).some((from, i) => from <= ms && ms < (toMs[i] as number));
  };
  return (district, ms) =>
    sweep.presentAt(district, ms).flatMap(({ item: row, drawsMa }): Drawing[] => {
      const item = items[row] as number;
      const train = trainOf(row);
      if (item < engines && isOffTrack(train, item)) return [];
      return [
        {
          locomotive: item < engines ? item : -1,
          rake: item < engines ? -1 : item - engines,
          state: moves(train, ms) ? "running" : "standing",
          ma: drawsMa,
        },
      ];
    });
}
