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

/** Everything about a group of demands that depends on each other, and its place in the search. Outputs by position. */
interface Search {
  readonly demands: readonly Demand[];
  readonly outputs: readonly number[];
  readonly candidates: readonly (readonly number[])[];
  /** Whom each demand follows, and in how many sections; the earlier in search order. */
  readonly follows: ReadonlyMap<number, readonly { readonly other: number; readonly sections: number }[]>;
  /** Last demand at which the output of each still matters. */
  readonly matters: readonly number[];
  /** Changes that no assignment spares from each demand on. */
  readonly unsparedFrom: readonly number[];
  /** Outputs that the demands from each on cannot tell apart; 0: none can take it. */
  readonly classes: readonly Int32Array[];
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
  const search = prepare(demands, pairs);
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
  return {
    outputs: traceBack(search, found),
    changes: found.changes,
    atLeast: Math.min(atLeast, found.changes),
  };
}

function prepare(demands: readonly Demand[], pairs: readonly FollowPair[]): Search {
  const outputs = [...new Set(demands.flatMap(({ candidates }) => candidates))].sort((a, b) => a - b);
  const position = new Map(outputs.map((output, at) => [output, at]));
  const follows = new Map<number, { other: number; sections: number }[]>();
  const unsparedFrom: number[] = new Array(demands.length + 1).fill(0);
  for (const { earlier, later, sections } of pairs) {
    const other = Math.min(earlier, later);
    const second = Math.max(earlier, later);
    const list = follows.get(second);
    if (list) list.push({ other, sections });
    else follows.set(second, [{ other, sections }]);
    if (!mayShare(demands[other] as Demand, demands[second] as Demand))
      unsparedFrom[second] = (unsparedFrom[second] as number) + sections;
  }
  for (let at = demands.length - 1; at >= 0; at--)
    unsparedFrom[at] = (unsparedFrom[at + 1] as number) + (unsparedFrom[at] as number);
  return {
    demands,
    outputs,
    candidates: demands.map(({ candidates }) => candidates.map((output) => position.get(output) as number)),
    follows,
    matters: lastThatMatters(demands, follows),
    unsparedFrom,
    classes: outputClasses(
      demands,
      demands.map((_, index) => index),
      outputs,
    ),
  };
}

function lastThatMatters(demands: readonly Demand[], follows: Search["follows"]): number[] {
  const matters = demands.map((_, index) => index);
  for (const [second, list] of follows)
    for (const { other } of list) matters[other] = Math.max(matters[other] as number, second);
  for (const [at, { endMs }] of demands.entries())
    for (let later = at + 1; later < demands.length; later++) {
      if ((demands[later] as Demand).startMs >= endMs) break;
      matters[at] = Math.max(matters[at] as number, later);
    }
  return matters;
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
  const demand = search.demands[depth] as Demand;
  const blocks = before.map((index) => compete(search.demands[index] as Demand, demand));
  const follows = (search.follows.get(depth) ?? []).map(({ other, sections }) => ({
    at: before.indexOf(other),
    sections,
  }));
  // the demand itself comes last, if it matters
  const kept = after.filter((index) => index !== depth).map((index) => before.indexOf(index));
  const isKept = kept.length < after.length;
  const name = createNaming(search, depth + 1);
  const known = new Map<string, Point>();
  for (const point of points)
    for (const output of optionsAt(search, point.held, blocks, depth)) {
      let { changes } = point;
      for (const { at, sections } of follows) if (point.held[at] !== output) changes += sections;
      const held = kept.map((at) => point.held[at] as number);
      if (isKept) held.push(output);
      const key = name(held);
      const same = known.get(key);
      if (!same || changes < same.changes) known.set(key, { held, changes, before: point, output });
    }
  return [...known.values()];
}

/** What the demand may take: outputs that others had and are free, and one of each kind that nobody had. */
function optionsAt(
  { candidates, outputs, classes }: Search,
  held: readonly number[],
  blocks: readonly boolean[],
  depth: number,
): number[] {
  const inUse = new Uint8Array(outputs.length);
  const blocked = new Uint8Array(outputs.length);
  for (const [at, output] of held.entries()) {
    inUse[output] = 1;
    if (blocks[at]) blocked[output] = 1;
  }
  const kinds = classes[depth + 1] as Int32Array;
  const seen = new Set<number>();
  return (candidates[depth] as readonly number[]).filter((output) => {
    if (inUse[output] === 1) return blocked[output] === 0;
    const kind = kinds[output] as number;
    if (seen.has(kind)) return false;
    seen.add(kind);
    return true;
  });
}

/**
 * Gives equal names to points that go on alike: of each output held its kind, and which of that kind it is in the
 * order in which they appear. Of a kind that nothing to come can take it does not matter which.
 */
function createNaming({ classes, outputs }: Search, depth: number): (held: readonly number[]) => string {
  const kinds = classes[depth] as Int32Array;
  const nth = new Int32Array(outputs.length);
  const counts = new Map<number, number>();
  return (held) => {
    nth.fill(0);
    counts.clear();
    let name = "";
    for (const output of held) {
      const kind = kinds[output] as number;
      if (nth[output] === 0 && kind !== 0) {
        const count = (counts.get(kind) ?? 0) + 1;
        counts.set(kind, count);
        nth[output] = count;
      }
      name += `${kind}.${nth[output]} `;
    }
    return name;
  };
}

function changesOf(pairs: readonly FollowPair[], outputs: readonly number[]): number {
  let changes = 0;
  for (const { earlier, later, sections } of pairs)
    if (outputs[earlier] !== outputs[later]) changes += sections;
  return changes;
}

function traceBack({ outputs }: Search, last: Point): number[] {
  const chosen: number[] = [];
  for (let point: Point | null = last; point?.before; point = point.before)
    chosen.push(outputs[point.output] as number);
  return chosen.reverse();
}
