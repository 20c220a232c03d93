import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { Problem, Train } from "../problem.ts";
import { comesMs, goesMs } from "./handed-on.ts";
import { listItems } from "./list-items.ts";
import type { StockPlan } from "./stock-plan.ts";

/**
 * Who works each item of stock in which order, and so how long every train stands before and after it runs.
 * Cost: sorting the trains, then linear in items named.
 */
export function planStock(problem: Problem, motions: Motions): StockPlan {
  const items = listItems(problem);
  const trains = problem.trains.length;
  const rows = items.item.length;
  const plan: StockPlan = {
    ...items,
    order: trainsInOrder(motions),
    standFromMs: new Int32Array(trains),
    standToMs: new Int32Array(trains),
    previous: new Int32Array(rows).fill(-1),
    next: new Int32Array(rows).fill(-1),
    drawsFromMs: new Int32Array(rows),
    drawsToMs: new Int32Array(rows),
  };
  chainWorkings(problem, plan);
  for (let train = 0; train < trains; train++)
    if (motions.timed[train] === 1) standTrain(problem, motions, plan, train);
  return plan;
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

/**
 * Writes how long a timed train and each of its items stands before and after its run.
 * @returns whether that changes anything
 */
export function standTrain(problem: Problem, motions: Motions, plan: StockPlan, train: number): boolean {
  const stated = problem.trains[train] as Train;
  const placed = stated.placedMs ?? problem.slot.startMs;
  const removed = stated.removedMs ?? problem.slot.endMs;
  const departs = firstDeparture(motions, train);
  const arrives = lastArrival(motions, train);
  const first = plan.firstItem[train] as number;
  const end = plan.firstItem[train + 1] as number;
  let isBrought = first < end;
  let broughtMs = -Infinity;
  let byHandMs = Infinity;
  let to = first < end ? arrives : Math.max(arrives, removed);
  let changes = false;
  for (let row = first; row < end; row++) {
    const previous = plan.previous[row] as number;
    const next = plan.next[row] as number;
    let since = departs;
    if (previous < 0) {
      isBrought = false;
      since = Math.min(departs, placed);
    } else {
      const goes = goesMs(problem, motions, previous, train);
      if (goes < departs) {
        since = comesMs(problem, motions, goes, train);
        byHandMs = Math.min(byHandMs, since);
      } else broughtMs = Math.max(broughtMs, lastArrival(motions, previous));
    }
    const until = next < 0 ? Math.max(arrives, removed) : goesMs(problem, motions, train, next);
    changes ||= plan.drawsFromMs[row] !== since || plan.drawsToMs[row] !== until;
    plan.drawsFromMs[row] = since;
    plan.drawsToMs[row] = until;
    to = Math.max(to, until);
  }
  const standing = !isBrought ? placed : broughtMs > -Infinity ? broughtMs : departs;
  const from = Math.min(departs, standing, byHandMs);
  changes ||= plan.standFromMs[train] !== from || plan.standToMs[train] !== to;
  plan.standFromMs[train] = from;
  plan.standToMs[train] = to;
  return changes;
}
