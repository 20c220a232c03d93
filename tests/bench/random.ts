/** Seeded random numbers: the same seed, the same numbers. Mulberry32, in the public domain. */
export interface Random {
  /** 0 to below 1. */
  next(): number;
  /** Whole, both ends included. */
  whole(least: number, most: number): number;
  pick<T>(from: readonly T[]): T;
  chance(probability: number): boolean;
}

export function createRandom(seed: number): Random {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    whole: (least, most) => least + Math.floor(next() * (most - least + 1)),
    pick: (from) => from[Math.floor(next() * from.length)] as (typeof from)[number],
    chance: (probability) => next() < probability,
  };
}
