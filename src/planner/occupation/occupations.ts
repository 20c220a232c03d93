import { type Motions, STANDS } from "../motion/motions.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { PlannerPolicy, Problem } from "../problem.ts";
import type { StockPlan } from "../stock/stock-plan.ts";

/**
 * Blocking times of all timed trains, section after section, by start: those of section s are rows `start[s]` to before
 * `start[s + 1]`. Half-open, ms.
 */
export interface Occupations {
  readonly start: Int32Array;
  readonly train: Int32Array;
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
  const occupations = allocate(problem.sections.length, motions);
  const next = occupations.start.slice();
  for (let i = 0; i < stock.order.length; i++)
    putTrain(problem.policy, motions, stock, occupations, next, stock.order[i] as number);
  for (let section = 0; section < problem.sections.length; section++) putInOrder(occupations, section);
  return occupations;
}

function allocate(sections: number, { timed, firstRow, section }: Motions): Occupations {
  const start = new Int32Array(sections + 1);
  for (let train = 0; train < timed.length; train++) {
    if (timed[train] === 0) continue;
    const end = firstRow[train + 1] as number;
    for (let row = firstRow[train] as number; row < end; row++) {
      const after = (section[row] as number) + 1;
      start[after] = (start[after] as number) + 1;
    }
  }
  for (let s = 0; s < sections; s++) start[s + 1] = (start[s + 1] as number) + (start[s] as number);
  const rows = start[sections] as number;
  return {
    start,
    train: new Int32Array(rows),
    pathRow: new Int32Array(rows),
    fromMs: new Int32Array(rows),
    toMs: new Int32Array(rows),
  };
}

function putTrain(
  { setUpMs, releaseMs }: PlannerPolicy,
  motions: Motions,
  stock: StockPlan,
  { train: trainAt, pathRow, fromMs, toMs }: Occupations,
  next: Int32Array,
  train: number,
): void {
  const { section, enterMs, clearMs } = motions;
  const end = motions.firstRow[train + 1] as number;
  for (let row = motions.firstRow[train] as number; row < end; row++) {
    const at = next[section[row] as number] as number;
    next[section[row] as number] = at + 1;
    const enter = enterMs[row] as number;
    const clear = clearMs[row] as number;
    trainAt[at] = train;
    pathRow[at] = row;
    fromMs[at] = enter === STANDS ? (stock.standFromMs[train] as number) : enter - setUpMs;
    toMs[at] = clear === STANDS ? (stock.standToMs[train] as number) : clear + releaseMs;
  }
}

/** Places an insertion may move a row on the average before the section is sorted outright. */
const PATIENCE = 24;

function putInOrder(occupations: Occupations, section: number): void {
  const { train, pathRow, fromMs, toMs } = occupations;
  const first = occupations.start[section] as number;
  const end = occupations.start[section + 1] as number;
  let patience = PATIENCE * (end - first);
  for (let i = first + 1; i < end; i++) {
    const from = fromMs[i] as number;
    if ((fromMs[i - 1] as number) <= from) continue;
    const to = toMs[i] as number;
    const moved = train[i] as number;
    const movedRow = pathRow[i] as number;
    let j = i;
    while (j > first && (fromMs[j - 1] as number) > from) {
      fromMs[j] = fromMs[j - 1] as number;
      toMs[j] = toMs[j - 1] as number;
      train[j] = train[j - 1] as number;
      pathRow[j] = pathRow[j - 1] as number;
      j--;
    }
    fromMs[j] = from;
    toMs[j] = to;
    train[j] = moved;
    pathRow[j] = movedRow;
    patience -= i - j;
    if (patience < 0) {
      sortOutright(occupations, first, end);
      return;
    }
  }
}

/** Equal starts stay as they are, as with insertion. */
function sortOutright(occupations: Occupations, first: number, end: number): void {
  const count = end - first;
  const { row } = sortInGroups(count, new Int32Array(count), 1, occupations.fromMs.subarray(first, end));
  for (const column of [occupations.train, occupations.pathRow, occupations.fromMs, occupations.toMs]) {
    const before = column.slice(first, end);
    for (let i = 0; i < count; i++) column[first + i] = before[row[i] as number] as number;
  }
}
