import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { StockPlan } from "../stock/stock-plan.ts";

/** The workings of each item in the order they are run: rows of the stock plan, item by item. */
export interface Workings {
  readonly start: Int32Array;
  readonly row: Int32Array;
  readonly trainOfRow: Int32Array;
}

export function listWorkings(stock: StockPlan, items: number): Workings {
  const { firstItem, item } = stock;
  const start = new Int32Array(items + 1);
  for (const worked of item) start[worked + 1] = (start[worked + 1] as number) + 1;
  for (let i = 0; i < items; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const next = start.slice();
  const workings = { start, row: new Int32Array(item.length), trainOfRow: new Int32Array(item.length) };
  for (let train = 0; train + 1 < firstItem.length; train++)
    for (let row = firstItem[train] as number; row < (firstItem[train + 1] as number); row++) {
      const place = next[item[row] as number] as number;
      next[item[row] as number] = place + 1;
      workings.row[place] = row;
      workings.trainOfRow[row] = train;
    }
  return workings;
}

/**
 * Puts the workings of one item in order, by first departure, last arrival and index, trains that are not timed last,
 * and writes who works it before and after whom. Cost: insertion, so about linear where one of them has moved.
 */
export function chainItem(workings: Workings, motions: Motions, stock: StockPlan, item: number): void {
  const { start, row, trainOfRow } = workings;
  const first = start[item] as number;
  const end = start[item + 1] as number;
  for (let i = first + 1; i < end; i++) {
    const moved = row[i] as number;
    let j = i;
    while (
      j > first &&
      runsBefore(motions, trainOfRow[moved] as number, trainOfRow[row[j - 1] as number] as number)
    ) {
      row[j] = row[j - 1] as number;
      j--;
    }
    row[j] = moved;
  }
  let before = -1;
  for (let i = first; i < end; i++) {
    const here = row[i] as number;
    const isTimed = motions.timed[trainOfRow[here] as number] === 1;
    stock.previous[here] = isTimed && before >= 0 ? (trainOfRow[before] as number) : -1;
    stock.next[here] = -1;
    if (isTimed && before >= 0) stock.next[before] = trainOfRow[here] as number;
    if (isTimed) before = here;
  }
}

function runsBefore(motions: Motions, a: number, b: number): boolean {
  if (motions.timed[a] !== motions.timed[b]) return motions.timed[a] === 1;
  if (motions.timed[a] === 0) return a < b;
  const by =
    firstDeparture(motions, a) - firstDeparture(motions, b) ||
    lastArrival(motions, a) - lastArrival(motions, b);
  return by < 0 || (by === 0 && a < b);
}
