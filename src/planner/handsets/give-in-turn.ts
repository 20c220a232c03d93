import type { ChargeBook, Held } from "./charge-book.ts";
import { IN_DRAWER } from "./charge-book.ts";
import type { HandsetDemand } from "./handset-demands.ts";

/** Which of two handsets to give first: each a different way of saving what is scarce. */
type Preference = (handset: number, demand: HandsetDemand, held: Held) => readonly [number, number];

const preferences = (book: ChargeBook): readonly Preference[] => [
  // what few could use; of these what is flat first
  (handset, demand, held) => [book.wanted(handset), book.flatAtMs(handset, demand, held)],
  // what is flat first, so that drawers stay full for later
  (handset, demand, held) => [book.flatAtMs(handset, demand, held), book.wanted(handset)],
  // what was handed in last, so that few are in use at all
  (handset, _, held) => [-held.freeAtMs, book.wanted(handset)],
];

/**
 * Hands handsets out in order of time and never takes one back: the first of a few ways that serves everybody, or null. A
 * night with handsets enough is shared out by it, however long it is; where it fails, nothing is proven. Each handset
 * given in time order keeps every rule (see ChargeBook). Cost: demands × handsets.
 */
export function giveInTurn(
  demands: readonly HandsetDemand[],
  order: readonly number[],
  book: ChargeBook,
): number[] | null {
  for (const preference of preferences(book)) {
    const given = giveBy(demands, order, book, preference);
    if (given !== null) return given;
  }
  return null;
}

function giveBy(
  demands: readonly HandsetDemand[],
  order: readonly number[],
  book: ChargeBook,
  prefer: Preference,
): number[] | null {
  const held = new Map<number, Held>();
  const given: number[] = new Array(demands.length);
  for (const at of order) {
    const demand = demands[at] as HandsetDemand;
    let best: number | null = null;
    let bestRank: readonly [number, number] = [0, 0];
    for (const handset of demand.candidates) {
      const state = held.get(handset) ?? IN_DRAWER;
      if (!book.isToBeHad(handset, demand, state)) continue;
      const rank = prefer(handset, demand, state);
      if (best !== null && !comesBefore(rank, bestRank)) continue;
      best = handset;
      bestRank = rank;
    }
    const state = best === null ? null : (held.get(best) ?? IN_DRAWER);
    // two claims of one handset at a time: nothing that is handed out mends that
    if (best === null || state === null || state.freeAtMs > demand.startMs) return null;
    given[at] = best;
    held.set(best, { freeAtMs: demand.endMs, firstMs: Math.min(state.firstMs, demand.startMs) });
  }
  return given;
}

const comesBefore = (a: readonly [number, number], b: readonly [number, number]) =>
  a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]);
