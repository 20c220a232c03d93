import { createHeightTree } from "./height-tree.ts";
import type { SectionDraws } from "./section-draws.ts";

/** What nodes feed together that hang on one breaker or booster; nothing does at first. */
export interface SharedFeed {
  /** Before: the node hangs not on it yet. */
  put(node: number): void;
  /** Before: the node hangs on it. */
  take(node: number): void;
  /** The most that is drawn from it at once, mA. */
  peakMa(): number;
}

/**
 * Sections on one breaker: whatever is in several of them draws once. Cost: of a change the node's pieces, each with the logarithm
 * of the instants.
 */
export function feedSections({ instants, from, to, drawsMa, bySection }: SectionDraws): SharedFeed {
  const tree = createHeightTree(instants);
  const inSections = new Int32Array(drawsMa.length);
  const lift = (piece: number, by: number) => tree.lift(from[piece] as number, to[piece] as number, by);
  return {
    put(section) {
      for (const piece of bySection[section] ?? []) {
        inSections[piece] = (inSections[piece] as number) + 1;
        if (inSections[piece] === 1) lift(piece, drawsMa[piece] as number);
      }
    },
    take(section) {
      for (const piece of bySection[section] ?? []) {
        inSections[piece] = (inSections[piece] as number) - 1;
        if (inSections[piece] === 0) lift(piece, -(drawsMa[piece] as number));
      }
    },
    peakMa: tree.height,
  };
}

/** Districts on one booster: a train over a joint of two draws from both, and so twice from it. */
export function feedDistricts(draws: SectionDraws, districts: readonly (readonly number[])[]): SharedFeed {
  const { instants, from, to, drawsMa, bySection } = draws;
  const tree = createHeightTree(instants);
  const pieces = districts.map((sections) => [...new Set(sections.flatMap((at) => bySection[at] ?? []))]);
  const lift = (district: number, sign: 1 | -1) => {
    for (const piece of pieces[district] ?? [])
      tree.lift(from[piece] as number, to[piece] as number, sign * (drawsMa[piece] as number));
  };
  return {
    put: (district) => lift(district, 1),
    take: (district) => lift(district, -1),
    peakMa: tree.height,
  };
}
