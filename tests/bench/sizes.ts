/** Plans that every bench of the planner sees: trains, sections wanted, and how many seeds the figures are medians of. */
export const SIZES = [
  { trains: 12, sections: 20, seeds: 7 },
  { trains: 40, sections: 60, seeds: 7 },
  { trains: 120, sections: 200, seeds: 7 },
  { trains: 400, sections: 200, seeds: 7 },
  { trains: 10_000, sections: 2_000, seeds: 3 },
] as const;

export type Size = (typeof SIZES)[number];

/** Laps and warm-up for plans of a size: fewer where one call takes long. */
export function effort({ trains }: { readonly trains: number }): {
  laps: number;
  lapMs: number;
  warmMs: number;
} {
  return trains < 1_000 ? { laps: 15, lapMs: 6, warmMs: 120 } : { laps: 9, lapMs: 25, warmMs: 300 };
}
