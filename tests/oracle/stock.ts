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

/** The sections that a train covers once it has arrived: those that its length reaches back over. */
function endsIn(problem: Problem, train: Train): number[] {
  const covered: number[] = [];
  for (let entry = train.path.length - 1, mm = train.lengthMm; entry >= 0 && mm > 0; entry--) {
    const section = train.path[entry]?.section as number;
    covered.push(section);
    mm -= problem.sections[section]?.lengthMm as number;
  }
  return covered;
}

/**
 * Stock between two workings that somebody carries: off at the stated removal of the first or, with none, at the stated
 * placing of the second if that is in another section; on again at the stated placing, or at once. Null: it waits on the
 * track, as it does where all that would come after the second departs.
 */
export function carried(
  problem: Problem,
  first: Train,
  second: Train,
): { offMs: number; onMs: number } | null {
  const stays = endsIn(problem, first).includes(second.path[0]?.section as number);
  const saysMs = first.removedMs ?? (stays ? null : second.placedMs);
  const offMs = Math.max(saysMs ?? Number.POSITIVE_INFINITY, arrives(first));
  if (offMs >= departs(second)) return null;
  return { offMs, onMs: Math.min(Math.max(second.placedMs ?? offMs, offMs), departs(second)) };
}

/** Since when the item stands at the train's first section for this working: null where it waits there for it, or drove in. */
export function itemPutDown(problem: Problem, item: string, index: number): number | null {
  const train = problem.trains[index] as Train;
  const before = previousWorking(problem, item, index);
  if (before === null) return Math.min(train.placedMs ?? problem.slot.startMs, departs(train));
  return carried(problem, before, train)?.onMs ?? null;
}

/** Since when the whole train stands at its first section, or the first piece of it that is put there by hand. */
export function standsFrom(problem: Problem, index: number): number {
  const train = problem.trains[index] as Train;
  const items = itemsOf(train);
  const putDown = items.map((item) => itemPutDown(problem, item, index)).filter((ms) => ms !== null);
  const isNew = items.length === 0 || items.some((item) => previousWorking(problem, item, index) === null);
  const drivenIn = items
    .filter((item) => itemPutDown(problem, item, index) === null)
    .map((item) => arrives(previousWorking(problem, item, index) as Train));
  if (isNew) putDown.push(train.placedMs ?? problem.slot.startMs);
  else if (drivenIn.length > 0) putDown.push(Math.max(...drivenIn));
  return Math.min(...putDown, departs(train));
}

/** Until when the item stands where this working left it. */
export function itemStandsTo(problem: Problem, item: string, index: number): number {
  const train = problem.trains[index] as Train;
  const next = nextWorking(problem, item, index);
  const to = next
    ? (carried(problem, train, next)?.offMs ?? departs(next))
    : (train.removedMs ?? problem.slot.endMs);
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
