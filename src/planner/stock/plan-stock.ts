import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { Problem, Train } from "../problem.ts";
import type { StockPlan } from "./stock-plan.ts";

/**
 * Who works each item of stock in which order, and so how long every train stands before and after it runs.
 * Cost: sorting the trains, then linear in items named.
 */
export function planStock(problem: Problem, motions: Motions): StockPlan {
  const plan = listItems(problem);
  chainWorkings(problem, motions, plan);
  for (let train = 0; train < problem.trains.length; train++)
    if (motions.timed[train] === 1) stand(problem, motions, plan, train);
  return plan;
}

function listItems(problem: Problem): StockPlan {
  const { trains, locomotives } = problem;
  const firstItem = new Int32Array(trains.length + 1);
  let most = 0;
  for (const train of trains) most += train.power.length + train.rakes.length;
  const item = new Int32Array(most);
  let row = 0;
  for (let t = 0; t < trains.length; t++) {
    const train = trains[t] as Train;
    const first = row;
    for (const { locomotive } of train.power) row = addOnce(item, first, row, locomotive);
    for (const rake of train.rakes) row = addOnce(item, first, row, locomotives.length + rake);
    firstItem[t + 1] = row;
  }
  const count = trains.length;
  return {
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

function chainWorkings(problem: Problem, motions: Motions, plan: StockPlan): void {
  const { firstItem, item, previous, next } = plan;
  const trainOfRow = new Int32Array(item.length);
  const latestRow = new Int32Array(problem.locomotives.length + problem.rakes.length).fill(-1);
  for (const train of trainsInOrder(motions)) {
    const end = firstItem[train + 1] as number;
    for (let row = firstItem[train] as number; row < end; row++) {
      trainOfRow[row] = train;
      const before = latestRow[item[row] as number] as number;
      if (before >= 0) {
        previous[row] = trainOfRow[before] as number;
        next[before] = train;
      }
      latestRow[item[row] as number] = row;
    }
  }
}

/** Timed trains by first departure, last arrival, index. */
function trainsInOrder(motions: Motions): number[] {
  const order: number[] = [];
  for (let train = 0; train < motions.timed.length; train++)
    if (motions.timed[train] === 1) order.push(train);
  return order.sort(
    (a, b) =>
      firstDeparture(motions, a) - firstDeparture(motions, b) ||
      lastArrival(motions, a) - lastArrival(motions, b) ||
      a - b,
  );
}

function stand(problem: Problem, motions: Motions, plan: StockPlan, train: number): void {
  const { placedMs, removedMs } = problem.trains[train] as Train;
  const departs = firstDeparture(motions, train);
  const arrives = lastArrival(motions, train);
  let from = -Infinity;
  let to = arrives;
  let brought = true;
  const first = plan.firstItem[train] as number;
  const end = plan.firstItem[train + 1] as number;
  for (let row = first; row < end; row++) {
    const previous = plan.previous[row] as number;
    const next = plan.next[row] as number;
    if (previous < 0) brought = false;
    else from = Math.max(from, lastArrival(motions, previous));
    to = Math.max(to, next < 0 ? (removedMs ?? problem.slot.endMs) : firstDeparture(motions, next));
  }
  if (first === end || !brought) from = placedMs ?? problem.slot.startMs;
  if (first === end) to = Math.max(to, removedMs ?? problem.slot.endMs);
  plan.standFromMs[train] = Math.min(from, departs);
  plan.standToMs[train] = to;
}
