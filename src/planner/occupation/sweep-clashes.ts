import type { Motions } from "../motion/motions.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import type { Occupations } from "./occupations.ts";

/** Pairs of rows of Occupations that are on one section at once and belong to different stock. */
export interface Clashes {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/**
 * Every pair once, section by section, earlier start first. `exclusive[section]` is 1 where one train is allowed.
 * In order of start, whatever begins before a blocking time ends overlaps it, so looking ahead from each row until
 * one begins too late visits overlapping pairs only. Cost: linear in rows and overlapping pairs.
 */
export function sweepClashes(
  motions: Motions,
  occupations: Occupations,
  exclusive: Uint8Array,
  stock: StockPlan,
): Clashes {
  const { start, pathRow, fromMs, toMs } = occupations;
  const clashes = { first: [] as number[], second: [] as number[] };
  for (let section = 0; section < exclusive.length; section++) {
    if (exclusive[section] === 0) continue;
    const end = start[section + 1] as number;
    for (let i = start[section] as number; i < end; i++) {
      const to = toMs[i] as number;
      for (let j = i + 1; j < end && (fromMs[j] as number) < to; j++) {
        // an empty blocking time overlaps nothing
        if ((toMs[j] as number) <= (fromMs[j] as number)) continue;
        const a = motions.trainOfRow[pathRow[i] as number] as number;
        if (sharesStock(stock, a, motions.trainOfRow[pathRow[j] as number] as number)) continue;
        clashes.first.push(i);
        clashes.second.push(j);
      }
    }
  }
  return clashes;
}
