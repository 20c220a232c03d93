import type { Items } from "./list-items.ts";

/** Where stock is between its workings. Trains whose times run backwards are in no chain. Times ms. */
export interface StockPlan extends Items {
  /** Timed trains by first departure, last arrival, index. */
  readonly order: Int32Array;
  /**
   * Since when the train stands where it departs from: where every item has a previous working, from the latest of
   * their last arrivals, or from when the first of it is put down by hand (comesMs); else from its placing or the slot's
   * start. Never after its departure.
   */
  readonly standFromMs: Int32Array;
  /**
   * Until when it stands where it arrived: the latest over its items of when the next working has them (goesMs) or, for
   * an item without one, its removal or the slot's end. Never before its arrival.
   */
  readonly standToMs: Int32Array;

  /** Train that worked the item before, −1: none. Workings of an item run by first departure, last arrival, index. */
  readonly previous: Int32Array;
  /** Train that takes the item next, −1: none. */
  readonly next: Int32Array;
  /**
   * For how long the item's draw belongs to this working, so that it is drawn for once: until its next working has it
   * (goesMs), or its removal or the slot's end; from when it is put down by hand, or from its placing or the slot's start
   * where no working brought it, else from the departure. Never less than the run.
   */
  readonly drawsFromMs: Int32Array;
  readonly drawsToMs: Int32Array;
}

/** Whether the two are one train or have a locomotive or rake in common: then their times never clash. */
export function sharesStock(plan: StockPlan, a: number, b: number): boolean {
  if (a === b) return true;
  const endA = plan.firstItem[a + 1] as number;
  const endB = plan.firstItem[b + 1] as number;
  for (let i = plan.firstItem[a] as number; i < endA; i++)
    for (let j = plan.firstItem[b] as number; j < endB; j++) if (plan.item[i] === plan.item[j]) return true;
  return false;
}
