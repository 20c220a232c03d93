import { compilePlan } from "../compile-plan.ts";
import { createLoadScene } from "../load/digital-load.ts";
import { sweepSurges } from "../load/surges.ts";
import type { Problem } from "../problem.ts";

/** A locomotive or a rake (by index, −1: the other) in a district at an instant, and what it is taken to draw. */
export interface Drawing {
  readonly locomotive: number;
  readonly rake: number;
  readonly state: "running" | "standing";
  readonly ma: number;
}

/**
 * Who the plan says is in a district at an instant. A locomotive that draws the same running and standing is called
 * running. Cost: once that of the surges of the whole plan, then linear in the district's events.
 */
export function createWhoDraws(problem: Problem): (district: number, ms: number) => Drawing[] {
  const scene = createLoadScene(compilePlan(problem));
  const sweep = sweepSurges(scene);
  const engines = problem.locomotives.length;
  return (district, ms) =>
    sweep.presentAt(district, ms).map(({ item: row, drawsMa }) => {
      const item = scene.stock.item[row] as number;
      return {
        locomotive: item < engines ? item : -1,
        rake: item < engines ? -1 : item - engines,
        state: drawsMa === scene.stock.runningMa[row] ? "running" : "standing",
        ma: drawsMa,
      };
    });
}
