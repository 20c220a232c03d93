import type { Allowance } from "../analog/allowance.ts";
import { type Assignment, assignOutputs } from "../analog/assign.ts";
import { searchOrder } from "../analog/demand.ts";
import { outputClasses } from "../analog/output-classes.ts";
import { type ChargeBook, type Charges, createChargeBook, type Held, IN_DRAWER } from "./charge-book.ts";
import { giveInTurn } from "./give-in-turn.ts";
import type { HandsetDemand } from "./handset-demands.ts";

/**
 * Gives every demand a handset, or proves that none can: exact. Nobody shares one at the same time, what is claimed stays,
 * and no charge lasts from the first pick-up of a handset to its last hand-in (design section 7). First without charges, by
 * the search that shares out controller outputs, whose proofs hold with them as well; only where its answer asks too much
 * of a charge, a search that knows them; but before either, the ways that never look back. What is claimed is never refused for its own charge: that is told of apart.
 * Cost: demands × handsets where there are
 * enough; else two searches, each within the allowance.
 */
export function shareHandsets(
  demands: readonly HandsetDemand[],
  charges: Charges,
  allowance: Allowance,
): Assignment {
  const order = searchOrder(demands);
  const book = createChargeBook(demands, charges);
  const given = giveInTurn(demands, order, book);
  if (given !== null) return { status: "assigned", outputs: given };
  const plain = assignOutputs(demands, allowance);
  if (plain.status !== "assigned" || lastsThrough(demands, plain.outputs, charges)) return plain;
  return shareCharges(demands, order, book, charges, allowance);
}

function lastsThrough(
  demands: readonly HandsetDemand[],
  handsets: readonly number[],
  charges: Charges,
): boolean {
  const away = new Map<number, { fromMs: number; untilMs: number; isClaimed: boolean }>();
  for (const [i, { startMs, endMs, isClaimed }] of demands.entries()) {
    const before = away.get(handsets[i] as number);
    away.set(handsets[i] as number, {
      fromMs: Math.min(startMs, before?.fromMs ?? startMs),
      untilMs: Math.max(endMs, before?.untilMs ?? endMs),
      isClaimed: isClaimed && (before?.isClaimed ?? true),
    });
  }
  return [...away].every(([handset, { fromMs, untilMs, isClaimed }]) => {
    const lasts = charges[handset] ?? Number.POSITIVE_INFINITY;
    return isClaimed || untilMs - fromMs <= lasts;
  });
}

interface Frame {
  readonly key: string;
  readonly options: readonly number[];
  tried: number;
  /** What the choice made here put aside. */
  before: Held;
}

/**
 * Demands in order of their start, depth first. What the past leaves is, of each handset, until when it is away and since
 * when its charge runs; handsets that differ in neither, nor in what is still to come for them, are one, and a state that
 * failed is not tried again.
 */
function shareCharges(
  demands: readonly HandsetDemand[],
  order: readonly number[],
  book: ChargeBook,
  charges: Charges,
  allowance: Allowance,
): Assignment {
  const { handsets } = book;
  const held = new Map(handsets.map((handset) => [handset, IN_DRAWER]));
  const look = createLook(demands, order, book, charges);
  const failed = new Set<string>();
  const open = (depth: number): Frame => {
    allowance.looks -= handsets.length;
    return { ...look(held, depth), tried: 0, before: IN_DRAWER };
  };
  const frames = [open(0)];
  let states = 1;
  while (frames.length > 0 && frames.length <= order.length) {
    const frame = frames[frames.length - 1] as Frame;
    const handset = frame.options[frame.tried++];
    if (handset === undefined) {
      failed.add(frame.key);
      frames.pop();
      const last = frames.at(-1);
      if (last) held.set(last.options[last.tried - 1] as number, last.before);
      continue;
    }
    const { startMs, endMs } = demands[order[frames.length - 1] as number] as HandsetDemand;
    frame.before = held.get(handset) as Held;
    held.set(handset, { freeAtMs: endMs, firstMs: Math.min(frame.before.firstMs, startMs) });
    const next = open(frames.length);
    if (failed.has(next.key)) held.set(handset, frame.before);
    else if (++states > allowance.mostStates || allowance.looks < 0) return { status: "not-decided" };
    else frames.push(next);
  }
  if (frames.length === 0) return { status: "impossible", reached: demands.length };
  const chosen: number[] = new Array(demands.length);
  for (const [depth, index] of order.entries()) {
    const { options, tried } = frames[depth] as Frame;
    chosen[index] = options[tried - 1] as number;
  }
  return { status: "assigned", outputs: chosen };
}

/** Names a state of the search, and lists what may be tried there. */
function createLook(
  demands: readonly HandsetDemand[],
  order: readonly number[],
  book: ChargeBook,
  charges: Charges,
) {
  const classes = outputClasses(demands, order, book.handsets);
  const position = new Map(book.handsets.map((handset, at) => [handset, at]));
  return function look(held: ReadonlyMap<number, Held>, depth: number): Pick<Frame, "key" | "options"> {
    const demand = demands[order[depth] as number];
    if (!demand) return { key: "done", options: [] };
    const stateOf = (handset: number) => held.get(handset) as Held;
    const nameOf = (handset: number) => {
      const { freeAtMs, firstMs } = stateOf(handset);
      const kind = book.isClaimed(handset)
        ? `#${handset}`
        : `${classes[depth]?.[position.get(handset) as number]}`;
      const charge = charges[handset];
      const since = charge == null || firstMs === Number.POSITIVE_INFINITY ? "" : `${firstMs}`;
      return `${kind}:${charge ?? ""}:${freeAtMs > demand.startMs ? freeAtMs : ""}:${since}`;
    };
    const names = new Map(book.handsets.map((handset) => [handset, nameOf(handset)]));
    const each = new Map<string, number>();
    for (const handset of demand.candidates) {
      const name = names.get(handset) as string;
      if (!each.has(name) && book.isToBeHad(handset, demand, stateOf(handset))) each.set(name, handset);
    }
    const flatAtMs = (handset: number) => book.flatAtMs(handset, demand, stateOf(handset));
    return {
      key: `${depth}|${[...names.values()].sort().join(" ")}`,
      // the least wanted first, then that whose charge ends first
      options: [...each.values()].sort(
        (a, b) => book.wanted(a) - book.wanted(b) || compare(flatAtMs(a), flatAtMs(b)) || a - b,
      ),
    };
  };
}

/** Infinities are equal. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
