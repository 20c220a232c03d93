import { compete, type Demand } from "../analog/demand.ts";
import { outputClasses } from "../analog/output-classes.ts";
import type { FollowPair } from "./follow-pairs.ts";

/** Outputs for all demands, and what can be said of others. Changes: selectors turned between two runs. */
export interface Thrift {
  readonly outputs: readonly number[];
  readonly changes: number;
  /** No assignment has fewer. */
  readonly atLeast: number;
}

/** Everything about a group of demands that depends on each other, and its place in the search. */
interface Search {
  readonly demands: readonly Demand[];
  /** Whom each demand follows, and in how many sections; the earlier in search order. */
  readonly follows: ReadonlyMap<number, readonly { readonly other: number; readonly sections: number }[]>;
  /** Last demand at which the output of each still matters. */
  readonly matters: readonly number[];
  /** Changes that no assignment spares from each demand on. */
  readonly unsparedFrom: readonly number[];
  readonly outputs: readonly number[];
  readonly classes: readonly Int32Array[];
  readonly mostPoints: number;
}

/** What is decided up to a demand. `held`: outputs of the demands that still matter, in order. */
interface Point {
  readonly held: readonly number[];
  readonly changes: number;
  readonly before: Point | null;
  readonly output: number;
}

/**
 * The fewest changes within one group of demands in search order; `given` works. Before each demand at most
 * `mostPoints` points are kept. Cost O(demands × mostPoints × outputs).
 */
export function searchGroup(
  demands: readonly Demand[],
  pairs: readonly FollowPair[],
  given: readonly number[],
  mostPoints: number,
): Thrift {
  const search = prepare(demands, pairs, mostPoints);
  const best = changesOf(pairs, given);
  let atLeast = best;
  if (search.unsparedFrom[0] === best) return { outputs: given, changes: best, atLeast };
  let points: Point[] = [{ held: [], changes: 0, before: null, output: -1 }];
  let alive: number[] = [];
  for (let depth = 0; depth < demands.length && points.length > 0; depth++) {
    const before = alive;
    alive = [...before, depth].filter((index) => (search.matters[index] as number) > depth);
    const next = step(search, { points, before, after: alive }, depth);
    const left = search.unsparedFrom[depth + 1] as number;
    const hopeful = next.filter(({ changes }) => changes + left < best).sort((a, b) => a.changes - b.changes);
    const dropped = hopeful[mostPoints];
    if (dropped) atLeast = Math.min(atLeast, dropped.changes + left);
    points = hopeful.slice(0, mostPoints);
  }
  const found = points[0];
  if (!found) return { outputs: given, changes: best, atLeast };
  return { outputs: traceBack(found), changes: found.changes, atLeast: Math.min(atLeast, found.changes) };
}

function prepare(demands: readonly Demand[], pairs: readonly FollowPair[], mostPoints: number): Search {
  const follows = new Map<number, { other: number; sections: number }[]>();
  const matters = demands.map((_, index) => index);
  const unspared: number[] = demands.map(() => 0);
  for (const { earlier, later, sections } of pairs) {
    const first = Math.min(earlier, later);
    const second = Math.max(earlier, later);
    const list = follows.get(second);
    if (list) list.push({ other: first, sections });
    else follows.set(second, [{ other: first, sections }]);
    matters[first] = Math.max(matters[first] as number, second);
    if (!mayShare(demands[first] as Demand, demands[second] as Demand))
      unspared[second] = (unspared[second] as number) + sections;
  }
  const unsparedFrom: number[] = new Array(demands.length + 1).fill(0);
  for (let at = demands.length - 1; at >= 0; at--)
    unsparedFrom[at] = (unsparedFrom[at + 1] as number) + (unspared[at] as number);
  for (const [at, { endMs }] of demands.entries())
    for (let later = at + 1; later < demands.length; later++) {
      if ((demands[later] as Demand).startMs >= endMs) break;
      matters[at] = Math.max(matters[at] as number, later);
    }
  const outputs = [...new Set(demands.flatMap(({ candidates }) => candidates))].sort((a, b) => a - b);
  const order = demands.map((_, index) => index);
  const classes = outputClasses(demands, order, outputs);
  return { demands, follows, matters, unsparedFrom, outputs, classes, mostPoints };
}

function mayShare(a: Demand, b: Demand): boolean {
  return !compete(a, b) && a.candidates.some((output) => b.candidates.includes(output));
}

/** Points before a demand, and the demands that matter before and after it. */
interface Layer {
  readonly points: readonly Point[];
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** All points after the demand at `depth`, of those that the rest cannot tell apart the first with fewest changes. */
function step(search: Search, { points, before, after }: Layer, depth: number): Point[] {
  const follows = search.follows.get(depth) ?? [];
  const known = new Map<string, Point>();
  for (const point of points) {
    const outputOf = new Map(before.map((index, at) => [index, point.held[at] as number]));
    for (const output of optionsAt(search, outputOf, depth)) {
      let { changes } = point;
      for (const { other, sections } of follows) if (outputOf.get(other) !== output) changes += sections;
      const held = after.map((index) => (index === depth ? output : (outputOf.get(index) as number)));
      const key = nameOf(search, held, depth + 1);
      const same = known.get(key);
      if (!same || changes < same.changes) known.set(key, { held, changes, before: point, output });
    }
  }
  return [...known.values()];
}

/** What the demand may take: outputs that others had and are free, and one of each kind that nobody had. */
function optionsAt(
  { demands, classes, outputs }: Search,
  outputOf: ReadonlyMap<number, number>,
  depth: number,
): number[] {
  const demand = demands[depth] as Demand;
  const blocked = new Set<number>();
  for (const [index, output] of outputOf) if (compete(demands[index] as Demand, demand)) blocked.add(output);
  const inUse = new Set(outputOf.values());
  const seen = new Set<number>();
  return demand.candidates.filter((output) => {
    if (inUse.has(output)) return !blocked.has(output);
    const kind = (classes[depth + 1] as Int32Array)[outputs.indexOf(output)] as number;
    if (seen.has(kind)) return false;
    seen.add(kind);
    return true;
  });
}

/** Equal for two points that go on alike: an output's name is its class and which of the class it is, by appearance. */
function nameOf({ classes, outputs }: Search, held: readonly number[], depth: number): string {
  const names = new Map<number, string>();
  const counts = new Map<number, number>();
  return held
    .map((output) => {
      const known = names.get(output);
      if (known !== undefined) return known;
      const kind = (classes[depth] as Int32Array)[outputs.indexOf(output)] as number;
      // nothing to come can take it: which it is does not matter
      if (kind === 0) return "0";
      const count = counts.get(kind) ?? 0;
      counts.set(kind, count + 1);
      const name = `${kind}.${count}`;
      names.set(output, name);
      return name;
    })
    .join(" ");
}

function changesOf(pairs: readonly FollowPair[], outputs: readonly number[]): number {
  let changes = 0;
  for (const { earlier, later, sections } of pairs)
    if (outputs[earlier] !== outputs[later]) changes += sections;
  return changes;
}

function traceBack(last: Point): number[] {
  const outputs: number[] = [];
  for (let point: Point | null = last; point?.before; point = point.before) outputs.unshift(point.output);
  return outputs;
}
