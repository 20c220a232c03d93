import { type Motions, STANDS } from "../motion/motions.ts";
import { type GroupedRows, sortInGroups } from "../order/sort-in-groups.ts";
import type { Problem } from "../problem.ts";
import type { StockPlan } from "../stock/stock-plan.ts";

/** Blocking times, one row a path entry as in Motions; half-open, ms. Empty for trains that are not timed. */
export interface Occupations {
  readonly trainOfRow: Int32Array;
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
  /** Rows by section, then `fromMs`. */
  readonly bySection: GroupedRows;
}

/**
 * When each section is taken for each train: from set-up before the head enters to release after the tail clears;
 * while the stock stands there before or after the run, from or to the end of that stand, with neither. Cost: linear
 * in path entries (see sortInGroups).
 */
export function occupy(problem: Problem, motions: Motions, stock: StockPlan): Occupations {
  const rows = motions.section.length;
  const blocked = {
    trainOfRow: new Int32Array(rows),
    fromMs: new Int32Array(rows),
    toMs: new Int32Array(rows),
  };
  for (let train = 0; train < problem.trains.length; train++)
    blockTrain(problem, motions, stock, blocked, train);
  return {
    ...blocked,
    bySection: sortInGroups(rows, motions.section, problem.sections.length, blocked.fromMs),
  };
}

/** Writes the rows of one train. */
export function blockTrain(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  blocked: Pick<Occupations, "trainOfRow" | "fromMs" | "toMs">,
  train: number,
): void {
  const { setUpMs, releaseMs } = problem.policy;
  const { enterMs, clearMs } = motions;
  const { trainOfRow, fromMs, toMs } = blocked;
  const timed = motions.timed[train] === 1;
  const standFromMs = timed ? (stock.standFromMs[train] as number) : problem.slot.startMs;
  const standToMs = timed ? (stock.standToMs[train] as number) : problem.slot.startMs;
  const end = motions.firstRow[train + 1] as number;
  for (let row = motions.firstRow[train] as number; row < end; row++) {
    const enter = timed ? (enterMs[row] as number) : STANDS;
    const clear = timed ? (clearMs[row] as number) : STANDS;
    trainOfRow[row] = train;
    fromMs[row] = enter === STANDS ? standFromMs : enter - setUpMs;
    toMs[row] = clear === STANDS ? standToMs : clear + releaseMs;
  }
}
