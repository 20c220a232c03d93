import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { MotivePower, Problem, Train } from "../problem.ts";
import type { StockPlan } from "./stock-plan.ts";

/**
 * Who works each item of stock in which order, and so how long every train stands before and after it runs.
 * Cost: sorting the trains, then linear in items named.
 */
export function planStock(problem: Problem, motions: Motions): StockPlan {
  const plan = listItems(problem, trainsInOrder(motions));
  chainWorkings(problem, plan);
  for (let train = 0; train < problem.trains.length; train++)
    if (motions.timed[train] === 1) standTrain(problem, motions, plan, train);
  return plan;
}

function listItems(problem: Problem, order: Int32Array): StockPlan {
  const { trains, locomotives } = problem;
  const count = trains.length;
  let most = 0;
  for (let t = 0; t < count; t++) {
    const train = trains[t] as Train;
    most += train.power.length + train.rakes.length;
  }
  const firstItem = new Int32Array(count + 1);
  const item = new Int32Array(most);
  let row = 0;
  for (let t = 0; t < count; t++) {
    const { power, rakes } = trains[t] as Train;
    const first = row;
    for (let i = 0; i < power.length; i++)
      row = addOnce(item, first, row, (power[i] as MotivePower).locomotive);
    for (let i = 0; i < rakes.length; i++)
      row = addOnce(item, first, row, locomotives.length + (rakes[i] as number));
    firstItem[t + 1] = row;
  }
  return {
    order,
    standFromMs: new Int32Array(count),
    standToMs: new Int32Array(count),
    firstItem,
    item: item.subarray(0, row),
    previous: new Int32Array(row).fill(-1),
    next: new Int32Array(row).fill(-1),
  };
}

function addOnce(item: Int32Array, first: number, row: number, added: number): number {
  for (let i = first; i < row; i++) if (item[i] === added) return row;
  item[row] = added;
  return row + 1;
}

function chainWorkings(problem: Problem, plan: StockPlan): void {
  const { order, firstItem, item, previous, next } = plan;
  const trainOfRow = new Int32Array(item.length);
  const latestRow = new Int32Array(problem.locomotives.length + problem.rakes.length).fill(-1);
  for (let i = 0; i < order.length; i++) {
    const train = order[i] as number;
    const end = firstItem[train + 1] as number;
    for (let row = firstItem[train] as number; row < end; row++) {
      trainOfRow[row] = train;
      const worked = item[row] as number;
      const before = latestRow[worked] as number;
      if (before >= 0) {
        previous[row] = trainOfRow[before] as number;
        next[before] = train;
      }
      latestRow[worked] = row;
    }
  }
}

function trainsInOrder(motions: Motions): Int32Array {
  const trains = new Int32Array(motions.timed.length);
  const departs = new Int32Array(motions.timed.length);
  let count = 0;
  for (let train = 0; train < motions.timed.length; train++) {
    if (motions.timed[train] === 0) continue;
    trains[count] = train;
    departs[count] = firstDeparture(motions, train);
    count++;
  }
  const { row, time } = sortInGroups(count, new Int32Array(count), 1, departs);
  for (let i = 0; i < count; i++) row[i] = trains[row[i] as number] as number;
  orderEqualDepartures(motions, row, time);
  return row;
}

/** By arrival within equal departures; the sort before has put them by index. */
function orderEqualDepartures(motions: Motions, order: Int32Array, departs: Int32Array): void {
  for (let i = 1; i < order.length; i++) {
    const train = order[i] as number;
    const arrives = lastArrival(motions, train);
    let j = i - 1;
    while (j >= 0 && departs[j] === departs[i] && lastArrival(motions, order[j] as number) > arrives) {
      order[j + 1] = order[j] as number;
      j--;
    }
    order[j + 1] = train;
  }
}

/** Writes how long a timed train stands before and after its run. */
export function standTrain(problem: Problem, motions: Motions, plan: StockPlan, train: number): void {
  const { placedMs, removedMs } = problem.trains[train] as Train;
  const departs = firstDeparture(motions, train);
  const arrives = lastArrival(motions, train);
  const first = plan.firstItem[train] as number;
  const end = plan.firstItem[train + 1] as number;
  let from = -Infinity;
  let to = arrives;
  let isBrought = first < end;
  for (let row = first; row < end; row++) {
    const previous = plan.previous[row] as number;
    const next = plan.next[row] as number;
    if (previous < 0) isBrought = false;
    else from = Math.max(from, lastArrival(motions, previous));
    to = Math.max(to, next < 0 ? (removedMs ?? problem.slot.endMs) : firstDeparture(motions, next));
  }
  if (!isBrought) from = placedMs ?? problem.slot.startMs;
  if (first === end) to = Math.max(to, removedMs ?? problem.slot.endMs);
  plan.standFromMs[train] = Math.min(from, departs);
  plan.standToMs[train] = to;
}
