import { type Motions, STANDS } from "../motion/motions.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { Problem } from "../problem.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";

/**
 * Blocking times of all timed trains, section after section, by start; see `blockingTime` for one. The numbers of one
 * lie together, so that putting them down in train order touches one line of memory and not three.
 */
export interface Occupations {
  /** Places in `slots`: those of section s are `start[s]` to before `start[s + 1]`, in steps of WIDTH. */
  readonly start: Int32Array;
  readonly slots: Int32Array;
}

/** Half-open, ms. */
export interface BlockingTime {
  /** Row in Motions. */
  readonly pathRow: number;
  readonly fromMs: number;
  readonly toMs: number;
}

// not exported: an exported constant is read from memory at each use
const WIDTH = 3;
const TO = 1;
const ROW = 2;
const NEVER = STANDS;

/** The blocking time at a place in `slots`. */
export function blockingTime({ slots }: Occupations, at: number): BlockingTime {
  return {
    pathRow: slots[at + ROW] as number,
    fromMs: slots[at] as number,
    toMs: slots[at + TO] as number,
  };
}

/** Those of one section, by start. */
export function blockingTimes(occupations: Occupations, section: number): BlockingTime[] {
  const times: BlockingTime[] = [];
  const end = occupations.start[section + 1] as number;
  for (let at = occupations.start[section] as number; at < end; at += WIDTH)
    times.push(blockingTime(occupations, at));
  return times;
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
  const start = findStarts(problem.sections.length, motions);
  const next = start.slice();
  const slots = new Int32Array(start[problem.sections.length] as number);
  for (let i = 0; i < order.length; i++) {
    const train = order[i] as number;
    const end = firstRow[train + 1] as number;
    const standFrom = standFromMs[train] as number;
    const standTo = standToMs[train] as number;
    for (let row = firstRow[train] as number; row < end; row++) {
      const here = section[row] as number;
      const at = next[here] as number;
      next[here] = at + WIDTH;
      const enter = enterMs[row] as number;
      const clear = clearMs[row] as number;
      slots[at] = enter === NEVER ? standFrom : enter - setUpMs;
      slots[at + TO] = clear === NEVER ? standTo : clear + releaseMs;
      slots[at + ROW] = row;
    }
  }
  const occupations = { start, slots };
  putInOrder(occupations);
  return occupations;
}

function findStarts(sections: number, { timed, firstRow, section }: Motions): Int32Array {
  const start = new Int32Array(sections + 1);
  for (let row = 0; row < section.length; row++) {
    const after = (section[row] as number) + 1;
    start[after] = (start[after] as number) + WIDTH;
  }
  for (let train = 0; train < timed.length; train++) {
    if (timed[train] === 1) continue;
    const end = firstRow[train + 1] as number;
    for (let row = firstRow[train] as number; row < end; row++) {
      const after = (section[row] as number) + 1;
      start[after] = (start[after] as number) - WIDTH;
    }
  }
  for (let s = 0; s < sections; s++) start[s + 1] = (start[s + 1] as number) + (start[s] as number);
  return start;
}

/** Places by which insertion may move a row on the average before the section is sorted outright. */
const PATIENCE = 24;

function putInOrder(occupations: Occupations): void {
  const { start, slots } = occupations;
  for (let section = 1; section < start.length; section++) {
    const first = start[section - 1] as number;
    const end = start[section] as number;
    let patience = PATIENCE * (end - first);
    for (let i = first + WIDTH; i < end && patience >= 0; i += WIDTH) {
      const from = slots[i] as number;
      if ((slots[i - WIDTH] as number) <= from) continue;
      const to = slots[i + TO] as number;
      const row = slots[i + ROW] as number;
      let j = i;
      do {
        slots[j] = slots[j - WIDTH] as number;
        slots[j + TO] = slots[j + TO - WIDTH] as number;
        slots[j + ROW] = slots[j + ROW - WIDTH] as number;
        j -= WIDTH;
      } while (j > first && (slots[j - WIDTH] as number) > from);
      slots[j] = from;
      slots[j + TO] = to;
      slots[j + ROW] = row;
      patience -= i - j;
    }
    if (patience < 0) sortOutright(slots, first, end);
  }
}

/** Equal starts stay as they are, as with insertion. */
function sortOutright(slots: Int32Array, first: number, end: number): void {
  const before = slots.slice(first, end);
  const count = before.length / WIDTH;
  const froms = new Int32Array(count);
  for (let i = 0; i < count; i++) froms[i] = before[i * WIDTH] as number;
  const { row } = sortInGroups(count, new Int32Array(count), 1, froms);
  for (let i = 0; i < count; i++) {
    const from = (row[i] as number) * WIDTH;
    slots.set(before.subarray(from, from + WIDTH), first + i * WIDTH);
  }
}

/** Pairs of blocking times, by place in `slots`, that are on one section at once and belong to different stock. */
export interface Clashes {
  readonly first: readonly number[];
  readonly second: readonly number[];
  /** There were more than were asked for; these are the first. */
  readonly cut: boolean;
}

/**
 * Every pair once, section by section, earlier start first. `exclusive[section]` is 1 where one train is allowed.
 * In order of start, whatever begins before a blocking time ends overlaps it, so looking ahead from each until one
 * begins too late visits overlapping pairs only. Cost: linear in blocking times and overlapping pairs, of which it
 * stops after `mostPairs`: all trains on all sections at once would be millions.
 */
export function sweepClashes(
  motions: Motions,
  { start, slots }: Occupations,
  exclusive: Uint8Array,
  stock: StockPlan,
  mostPairs: number = Number.POSITIVE_INFINITY,
): Clashes {
  const { trainOfRow } = motions;
  const first: number[] = [];
  const second: number[] = [];
  for (let section = 0; section < exclusive.length; section++) {
    if (exclusive[section] === 0) continue;
    const end = start[section + 1] as number;
    for (let i = start[section] as number; i < end; i += WIDTH) {
      const to = slots[i + TO] as number;
      for (let j = i + WIDTH; j < end && (slots[j] as number) < to; j += WIDTH) {
        // an empty blocking time overlaps nothing
        if ((slots[j + TO] as number) <= (slots[j] as number)) continue;
        const a = trainOfRow[slots[i + ROW] as number] as number;
        const b = trainOfRow[slots[j + ROW] as number] as number;
        if (sharesStock(stock, a, b)) continue;
        if (first.length >= mostPairs) return { first, second, cut: true };
        first.push(i);
        second.push(j);
      }
    }
  }
  return { first, second, cut: false };
}
