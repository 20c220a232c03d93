import type { Link } from "../problem.ts";

/** Sections that can be entered from each: of section s, `to[start[s]]` to before `to[start[s + 1]]`. */
export interface Adjacency {
  readonly start: Int32Array;
  readonly to: Int32Array;
}

/** The links as an adjacency array, for many questions at once. Cost: linear in sections and links. */
export function listNeighbours(sections: number, links: readonly Link[]): Adjacency {
  const start = new Int32Array(sections + 1);
  for (const { from, to, oneWay } of links) {
    start[from + 1] = (start[from + 1] as number) + 1;
    if (!oneWay) start[to + 1] = (start[to + 1] as number) + 1;
  }
  for (let section = 0; section < sections; section++)
    start[section + 1] = (start[section + 1] as number) + (start[section] as number);
  const next = start.slice();
  const neighbours = new Int32Array(start[sections] as number);
  const add = (from: number, to: number) => {
    const at = next[from] as number;
    neighbours[at] = to;
    next[from] = at + 1;
  };
  for (const { from, to, oneWay } of links) {
    add(from, to);
    if (!oneWay) add(to, from);
  }
  return { start, to: neighbours };
}

/** Whether a path may go from one straight to the other; the same section named again is a reversal. */
export function canFollow({ start, to }: Adjacency, from: number, next: number): boolean {
  if (from === next) return true;
  const end = start[from + 1] as number;
  for (let i = start[from] as number; i < end; i++) if (to[i] === next) return true;
  return false;
}
