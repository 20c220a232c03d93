import type { SharedFeed } from "./shared-feed.ts";

/** Nodes that hang on one breaker or booster, in the order in which they were taken, and the most they draw at once. */
export interface Group {
  readonly nodes: readonly number[];
  readonly peakMa: number;
}

/** Sections and the links between them, or districts and the joints between them. */
export interface Network {
  /** Neighbours of each node, in the order in which they are asked. */
  readonly beside: readonly (readonly number[])[];
  /** All nodes: of equal ends the first is begun from. */
  readonly order: readonly number[];
  /** Whether nothing ever draws from the node. */
  isIdle(node: number): boolean;
}

/**
 * Groups that each draw no more than `limitMa` at once, but for a node that draws more by itself. A group grows from an end of
 * what is left, nearest first, by every neighbour that it bears; where it has taken all that is linked to it, it goes on at the
 * end of another piece of track. So it is one connected stretch of each such piece, and no two groups side by side could be
 * one. Idle nodes go with whoever reaches them first; those linked to none that draws are in no group. Greedy, so not always
 * the fewest. Before: nothing hangs on `feed`. After: neither. Cost: nodes × (links of each + groups), with the changes of `feed`.
 */
export function growGroups({ beside, order, isIdle }: Network, feed: SharedFeed, limitMa: number): Group[] {
  const taken = new Uint8Array(beside.length);
  const { pieceOf, leftIn } = findPieces(beside, isIdle);
  const groups: Group[] = [];
  for (let start = nextEnd(); start >= 0; start = nextEnd()) {
    const nodes: number[] = [];
    take(start, nodes);
    growFrom(start, nodes);
    // on another piece of track only where nothing of this one is left
    for (let at = start; leftIn[pieceOf[at] as number] === 0; ) {
      at = nextEnd();
      if (at < 0 || !takeIfBorne(at, nodes)) break;
      growFrom(at, nodes);
    }
    groups.push({ nodes, peakMa: feed.peakMa() });
    for (const node of nodes) feed.take(node);
  }
  return groups;

  /** The node that draws with the fewest neighbours left, of equals the first; −1: none is left. */
  function nextEnd(): number {
    let best = -1;
    let fewest = Number.POSITIVE_INFINITY;
    for (const node of order) {
      if (taken[node] === 1 || isIdle(node)) continue;
      const left = (beside[node] ?? []).reduce((sum, other) => sum + (taken[other] === 1 ? 0 : 1), 0);
      if (left < fewest) [best, fewest] = [node, left];
    }
    return best;
  }

  function take(node: number, nodes: number[]): void {
    mark(node, 1);
    feed.put(node);
    nodes.push(node);
  }

  function mark(node: number, as: 0 | 1): void {
    taken[node] = as;
    const piece = pieceOf[node] as number;
    if (!isIdle(node)) leftIn[piece] = (leftIn[piece] as number) + (as === 1 ? -1 : 1);
  }

  function takeIfBorne(node: number, nodes: number[]): boolean {
    take(node, nodes);
    if (isIdle(node) || feed.peakMa() <= limitMa) return true;
    mark(node, 0);
    feed.take(node);
    nodes.pop();
    return false;
  }

  function growFrom(start: number, nodes: number[]): void {
    const asked = new Set([start]);
    const waiting = [start];
    for (const node of waiting)
      for (const other of beside[node] ?? []) {
        if (taken[other] === 1 || asked.has(other)) continue;
        asked.add(other);
        if (takeIfBorne(other, nodes)) waiting.push(other);
      }
  }
}

/** Which piece of track, all of it linked, each node belongs to, and how many nodes of each draw. */
function findPieces(beside: Network["beside"], isIdle: Network["isIdle"]) {
  const pieceOf = new Int32Array(beside.length).fill(-1);
  const leftIn: number[] = [];
  for (const start of beside.keys()) {
    if (pieceOf[start] !== -1) continue;
    const piece = leftIn.push(0) - 1;
    pieceOf[start] = piece;
    const waiting = [start];
    for (const node of waiting) {
      if (!isIdle(node)) leftIn[piece] = (leftIn[piece] as number) + 1;
      for (const other of beside[node] ?? []) {
        if (pieceOf[other] !== -1) continue;
        pieceOf[other] = piece;
        waiting.push(other);
      }
    }
  }
  return { pieceOf, leftIn };
}
