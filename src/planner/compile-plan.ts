import { changeOverBetween } from "./control/change-over-between.ts";
import { cutIntoParts } from "./control/cut-into-parts.ts";
import type { Parts } from "./control/parts.ts";
import { computeMotions } from "./motion/compute-motions.ts";
import type { Motions } from "./motion/motions.ts";
import type { Problem } from "./problem.ts";
import { planStock } from "./stock/plan-stock.ts";
import type { StockPlan } from "./stock/stock-plan.ts";
import { type Track, tabulateTrack } from "./track/track.ts";

/** A problem and, in number columns, what of it every pass needs. */
export interface Plan {
  readonly problem: Problem;
  readonly track: Track;
  readonly motions: Motions;
  readonly stock: StockPlan;
  readonly parts: Parts;
}

/** Who moves when, what stock stands where, what is digital and what analog. Cost: linear in path entries. */
export function compilePlan(problem: Problem): Plan {
  const track = tabulateTrack(problem);
  const motions = computeMotions(problem, track);
  const stock = planStock(problem, motions);
  const parts = cutIntoParts(problem, motions, track);
  changeOverBetween(problem, motions, stock, parts);
  return { problem, track, motions, stock, parts };
}
