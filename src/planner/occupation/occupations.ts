import { type Motions, STANDS } from "../motion/motions.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { Problem } from "../problem.ts";
import type { StockPlan } from "../stock/stock-plan.ts";

/**
 * Blocking times of all timed trains, section after section, by start: those of section s are rows `start[s]` to before
 * `start[s + 1]`. Half-open, ms.
 */
export interface Occupations {
  readonly start: Int32Array;
  /** Row in Motions. */
  readonly pathRow: Int32Array;
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
}

/**
 * When each section is taken for each train: from set-up before the head enters to release after the tail clears;
 * while the stock stands there before or after the run, from or to the end of that stand, with neither. Trains are put
 * down in order of departure, so that each section's list is nearly in order and insertion finishes it. Cost: linear in
 * path entries, but for sections that trains reach in quite another order than they left in: those are sorted.
 */
export function occupy(problem: Problem, motions: Motions, stock: StockPlan): Occupations {
  const { setUpMs, releaseMs } = problem.policy;
  const { section, firstRow, enterMs, clearMs } = motions;
  const { order, standFromMs, standToMs } = stock;
  const start = countRows(problem.sections.length, motions);
  const rows = start[problem.sections.length] as number;
  const next = start.slice();
  const pathRow = new Int32Array(rows);
  const fromMs = new Int32Array(rows);
  const toMs = new Int32Array(rows);
  for (let i = 0; i < order.length; i++) {
    const train = order[i] as number;
    const end = firstRow[train + 1] as number;
    const standFrom = standFromMs[train] as number;
    const standTo = standToMs[train] as number;
    for (let row = firstRow[train] as number; row < end; row++) {
      const here = section[row] as number;
      const at = next[here] as number;
      next[here] = at + 1;
      const enter = enterMs[row] as number;
      const clear = clearMs[row] as number;
      pathRow[at] = row;
      fromMs[at] = enter === STANDS ? standFrom : enter - setUpMs;
      toMs[at] = clear === STANDS ? standTo : clear + releaseMs;
    }
  }
  const occupations = { start, pathRow, fromMs, toMs };
  putInOrder(occupations);
  return occupations;
}

/** Where each section's rows start. */
function countRows(sections: number, { timed, firstRow, section }: Motions): Int32Array {
  const start = new Int32Array(sections + 1);
  for (let row = 0; row < section.length; row++) {
    const after = (section[row] as number) + 1;
    start[after] = (start[after] as number) + 1;
  }
  for (let train = 0; train < timed.length; train++) {
    if (timed[train] === 1) continue;
    const end = firstRow[train + 1] as number;
    for (let row = firstRow[train] as number; row < end; row++) {
      const after = (section[row] as number) + 1;
      start[after] = (start[after] as number) - 1;
    }
  }
  for (let s = 0; s < sections; s++) start[s + 1] = (start[s + 1] as number) + (start[s] as number);
  return start;
}

/** Places by which insertion may move a row on the average before the section is sorted outright. */
const PATIENCE = 24;

function putInOrder(occupations: Occupations): void {
  const { start, pathRow, fromMs, toMs } = occupations;
  for (let section = 1; section < start.length; section++) {
    const first = start[section - 1] as number;
    const end = start[section] as number;
    let patience = PATIENCE * (end - first);
    for (let i = first + 1; i < end && patience >= 0; i++) {
      const from = fromMs[i] as number;
      if ((fromMs[i - 1] as number) <= from) continue;
      const to = toMs[i] as number;
      const moved = pathRow[i] as number;
      let j = i;
      do {
        fromMs[j] = fromMs[j - 1] as number;
        toMs[j] = toMs[j - 1] as number;
        pathRow[j] = pathRow[j - 1] as number;
        j--;
      } while (j > first && (fromMs[j - 1] as number) > from);
      fromMs[j] = from;
      toMs[j] = to;
      pathRow[j] = moved;
      patience -= i - j;
    }
    if (patience < 0) sortOutright(occupations, first, end);
  }
}

/** Equal starts stay as they are, as with insertion. */
function sortOutright(occupations: Occupations, first: number, end: number): void {
  const count = end - first;
  const { row } = sortInGroups(count, new Int32Array(count), 1, occupations.fromMs.subarray(first, end));
  for (const column of [occupations.pathRow, occupations.fromMs, occupations.toMs]) {
    const before = column.slice(first, end);
    for (let i = 0; i < count; i++) column[first + i] = before[row[i] as number] as number;
  }
}
