/** A step function over numbered instants, everywhere 0 at first: parts of it are lifted and lowered, its height is asked. */
export interface HeightTree {
  /** Lifts it by `by` from instant number `from` to before number `to`; a negative `by` lowers it. */
  lift(from: number, to: number, by: number): void;
  /** The greatest value anywhere. */
  height(): number;
}

/**
 * A tree over the instants, from memory: each node knows the greatest value below it, and what lifts all of it. Cost: of a
 * lift the logarithm of `instants`, of the height nothing.
 */
export function createHeightTree(instants: number): HeightTree {
  let leaves = 1;
  while (leaves < instants) leaves *= 2;
  const most = new Int32Array(2 * leaves);
  const lifted = new Int32Array(2 * leaves);
  const liftNode = (node: number, by: number) => {
    most[node] = (most[node] as number) + by;
    lifted[node] = (lifted[node] as number) + by;
  };
  const settleAbove = (leaf: number) => {
    for (let node = leaf >> 1; node >= 1; node >>= 1)
      most[node] =
        Math.max(most[2 * node] as number, most[2 * node + 1] as number) + (lifted[node] as number);
  };
  return {
    lift(from, to, by) {
      if (from >= to) return;
      for (let l = from + leaves, r = to + leaves; l < r; l >>= 1, r >>= 1) {
        if (l & 1) liftNode(l++, by);
        if (r & 1) liftNode(--r, by);
      }
      settleAbove(from + leaves);
      settleAbove(to - 1 + leaves);
    },
    height: () => most[1] as number,
  };
}
