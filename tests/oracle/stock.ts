import type { Problem, Train } from "../../src/planner/problem.ts";
import { runsBackwards } from "./journey.ts";

/** Who works what next, and how long stock stands, by looking at every other train. Trains by index. */

const departs = (train: Train) => train.path[0]?.departMs as number;
const arrives = (train: Train) => train.path.at(-1)?.arriveMs as number;

/** Names of the locomotives and rakes of a train. */
export function itemsOf(train: Train): string[] {
  return [
    ...new Set([
      ...train.power.map(({ locomotive }) => `loco ${locomotive}`),
      ...train.rakes.map((rake) => `rake ${rake}`),
    ]),
  ];
}

/** All workings of an item that have a motion, in the order they are run. */
export function workings(problem: Problem, item: string): number[] {
  return problem.trains
    .map((train, index) => ({ train, index }))
    .filter(({ train }) => itemsOf(train).includes(item) && !runsBackwards(train))
    .sort(
      (a, b) =>
        departs(a.train) - departs(b.train) || arrives(a.train) - arrives(b.train) || a.index - b.index,
    )
    .map(({ index }) => index);
}

export function previousWorking(problem: Problem, item: string, train: number): Train | null {
  const all = workings(problem, item);
  return problem.trains[all[all.indexOf(train) - 1] ?? -1] ?? null;
}

export function nextWorking(problem: Problem, item: string, train: number): Train | null {
  const all = workings(problem, item);
  return problem.trains[all[all.indexOf(train) + 1] ?? -1] ?? null;
}

/** Since when the whole train stands at its first section. */
export function standsFrom(problem: Problem, index: number): number {
  const train = problem.trains[index] as Train;
  const items = itemsOf(train);
  const before = items.map((item) => previousWorking(problem, item, index));
  const brought = items.length > 0 && before.every((working) => working !== null);
  const from = brought
    ? Math.max(...before.map((working) => arrives(working as Train)))
    : (train.placedMs ?? problem.slot.startMs);
  return Math.min(from, departs(train));
}

/** Until when the item stands where this working left it. */
export function itemStandsTo(problem: Problem, item: string, index: number): number {
  const train = problem.trains[index] as Train;
  const next = nextWorking(problem, item, index);
  const to = next ? departs(next) : (train.removedMs ?? problem.slot.endMs);
  return Math.max(to, arrives(train));
}

/** Until when anything of the train stands at its last sections. */
export function standsTo(problem: Problem, index: number): number {
  const train = problem.trains[index] as Train;
  const items = itemsOf(train);
  if (items.length === 0) return Math.max(train.removedMs ?? problem.slot.endMs, arrives(train));
  return Math.max(...items.map((item) => itemStandsTo(problem, item, index)));
}

/** One train, or two with a locomotive or rake in common. */
export function sameStock(problem: Problem, a: number, b: number): boolean {
  const itemsOfB = itemsOf(problem.trains[b] as Train);
  return a === b || itemsOf(problem.trains[a] as Train).some((item) => itemsOfB.includes(item));
}
