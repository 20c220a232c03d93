import type { Motions } from "../motion/motions.ts";

/** When one train moves, passes included, half-open and in order; the first `count` rows hold. */
export interface Moves {
  count: number;
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
}

export function createMoves(motions: Motions): Moves {
  let most = 0;
  for (let train = 0; train < motions.timed.length; train++)
    most = Math.max(most, (motions.firstCall[train + 1] as number) - (motions.firstCall[train] as number));
  return { count: 0, fromMs: new Int32Array(most), toMs: new Int32Array(most) };
}

/** Overwrites `moves` with those of a timed train. Linear in its calls. */
export function findMoves(moves: Moves, { firstCall, arriveMs, departMs }: Motions, train: number): void {
  const last = (firstCall[train + 1] as number) - 1;
  let count = 0;
  for (let call = firstCall[train] as number; call < last; call++) {
    const departs = departMs[call] as number;
    const goesOn = count > 0 && moves.toMs[count - 1] === departs;
    if (!goesOn) moves.fromMs[count++] = departs;
    moves.toMs[count - 1] = arriveMs[call + 1] as number;
  }
  moves.count = count;
}
