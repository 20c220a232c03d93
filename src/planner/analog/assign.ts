import type { Allowance } from "./allowance.ts";
import { type Outlook, overfull } from "./clique.ts";
import { type Demand, searchOrder } from "./demand.ts";
import { outputClasses } from "./output-classes.ts";

/** `outputs[i]` serves `demands[i]`. `reached`: how many demands, in search order, already cannot all be served. */
export type Assignment =
  | { readonly status: "assigned"; readonly outputs: readonly number[] }
  | { readonly status: "impossible"; readonly reached: number }
  | { readonly status: "not-decided" };

/** An output in use at a point of the search. */
interface Held {
  readonly output: number;
  readonly freeAtMs: number;
  readonly train: number;
}

/** A point of the search: the outputs in use when the demand at this depth starts, and what may still be tried. */
interface Frame {
  readonly held: readonly Held[];
  readonly key: string;
  readonly options: readonly number[];
  tried: number;
}

/**
 * Gives every demand an output, or proves that none can: exact. Dynamic programme over the frontier of demands in
 * order of their start, worked depth first so that a solvable case need not visit every state. All that the past
 * leaves behind at a start is which outputs are held, and until when; outputs that the rest of the demands cannot
 * tell apart are one (outputClasses), so a state met again is not searched again; and a state is given up as soon
 * as at some coming instant the outputs left are too few for the demands then open (overfull). The problem is
 * list colouring of an interval graph, NP-complete in general and polynomial for a fixed number of outputs (Arkin
 * and Silverberg 1987, "Scheduling jobs with fixed start and end times"; from memory). Cost O(states × outputs);
 * more than the allowance gives `not-decided`. Same input, same answer.
 */
export function assignOutputs(demands: readonly Demand[], allowance: Allowance): Assignment {
  const order = searchOrder(demands);
  const outputs = [...new Set(demands.flatMap((demand) => demand.candidates))].sort((a, b) => a - b);
  // for the classes
  allowance.looks -= demands.length * outputs.length;
  if (allowance.looks < 0) return { status: "not-decided" };
  const open = createOpening(demands, order, outputs, allowance);
  const failed = new Set<string>();
  const frames: Frame[] = [open([], 0)];
  const chosen: number[] = [];
  let states = 1;
  // how far into the order any failure so far looked
  let reached = stuckAt({ demands, order, allowance }, [], 0);
  if (reached > 0) return { status: "impossible", reached };
  while (frames.length > 0 && frames.length <= order.length) {
    const frame = frames[frames.length - 1] as Frame;
    reached = Math.max(reached, frames.length);
    const output = frame.options[frame.tried++];
    if (output === undefined) {
      failed.add(frame.key);
      frames.pop();
      chosen.pop();
      continue;
    }
    const demand = demands[order[frames.length - 1] as number] as Demand;
    const next = open(take(frame.held, output, demand), frames.length);
    if (failed.has(next.key)) continue;
    if (++states > allowance.mostStates || allowance.looks < 0) return { status: "not-decided" };
    const stuck = stuckAt({ demands, order, allowance }, next.held, frames.length);
    if (stuck > 0) {
      reached = Math.max(reached, stuck);
      failed.add(next.key);
    } else {
      chosen.push(output);
      frames.push(next);
    }
  }
  if (frames.length === 0) return { status: "impossible", reached };
  const result: number[] = new Array(demands.length);
  for (const [depth, index] of order.entries()) result[index] = chosen[depth] as number;
  return { status: "assigned", outputs: result };
}

/**
 * Whether what is held leaves too few outputs at an instant before all of it is free again; at the very start,
 * whether there are too few at any. 0: no; else how far into the order the demands that show it go.
 */
function stuckAt(
  search: Pick<Outlook, "demands" | "order" | "allowance">,
  held: readonly Held[],
  from: number,
): number {
  const holds = new Map(held.map((each) => [each.output, each]));
  const beforeMs = from === 0 ? Number.POSITIVE_INFINITY : Math.max(...held.map(({ freeAtMs }) => freeAtMs));
  const barred = (output: number, demand: Demand) => {
    const holding = holds.get(output);
    return holding !== undefined && holding.freeAtMs > demand.startMs && holding.train !== demand.train;
  };
  return overfull({ ...search, from, beforeMs, barred })?.lastAt ?? 0;
}

/** What is held after `demand` has taken `output`: one entry an output, free when its last holder is done. */
function take(held: readonly Held[], output: number, demand: Demand): Held[] {
  const before = held.find((other) => other.output === output);
  const freeAtMs = Math.max(demand.endMs, before?.freeAtMs ?? demand.endMs);
  return [...held.filter((other) => other !== before), { output, freeAtMs, train: demand.train }];
}

/**
 * Makes the frame at a depth from what is held: drops what is free again, names the state, lists what may be
 * tried.
 */
function createOpening(
  demands: readonly Demand[],
  order: readonly number[],
  outputs: readonly number[],
  allowance: Allowance,
) {
  const classes = outputClasses(demands, order, outputs);
  const position = new Map(outputs.map((output, at) => [output, at]));
  const classAt = (depth: number, output: number) =>
    (classes[depth] as Int32Array)[position.get(output) as number] as number;
  const repeats = trainsWithTwo(demands);

  return function open(before: readonly Held[], depth: number): Frame {
    const demand = demands[order[depth] as number];
    if (!demand) return { held: before, key: "done", options: [], tried: 0 };
    allowance.looks -= before.length + demand.candidates.length;
    const held = before.filter((other) => other.freeAtMs > demand.startMs);
    const names = held
      .map((other) => ({ ...other, name: classAt(depth, other.output) }))
      .filter((other) => other.name !== 0)
      .map((other) => `${other.name}:${other.freeAtMs}:${repeats.has(other.train) ? other.train : ""}`);
    return {
      held,
      key: `${depth}|${names.sort().join(" ")}`,
      options: options(demand, held, depth),
      tried: 0,
    };
  };

  /**
   * What the train already holds first, then one free output of each class, the least wanted by later demands
   * first.
   */
  function options(demand: Demand, held: readonly Held[], depth: number): number[] {
    const holder = new Map(held.map((other) => [other.output, other.train]));
    const own = demand.candidates.filter((output) => holder.get(output) === demand.train);
    const byClass = new Map<number, number>();
    for (const output of demand.candidates) {
      const name = classAt(depth + 1, output);
      if (!holder.has(output) && !byClass.has(name)) byClass.set(name, output);
    }
    const wanted = wantedDuring(demand, depth + 1);
    const want = (output: number) => wanted.get(output) ?? 0;
    return [...own, ...[...byClass.values()].sort((a, b) => want(a) - want(b) || a - b)];
  }

  /** How many of the demands from a depth on that start before `demand` ends could take each output. */
  function wantedDuring(demand: Demand, from: number): Map<number, number> {
    const wanted = new Map<number, number>();
    for (let k = from; k < order.length; k++) {
      const later = demands[order[k] as number] as Demand;
      if (later.startMs >= demand.endMs) break;
      allowance.looks -= later.candidates.length;
      for (const output of later.candidates) wanted.set(output, (wanted.get(output) ?? 0) + 1);
    }
    return wanted;
  }
}

/** Trains with more than one demand: of what they hold it matters whose it is. */
function trainsWithTwo(demands: readonly Demand[]): Set<number> {
  const seen = new Set<number>();
  const twice = new Set<number>();
  for (const { train } of demands) (seen.has(train) ? twice : seen).add(train);
  return twice;
}
