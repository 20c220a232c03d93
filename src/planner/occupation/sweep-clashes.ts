import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import type { Occupations } from "./occupations.ts";

/** Pairs of rows that are on one section at once and belong to different stock. */
export interface Clashes {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/**
 * Every pair once, section by section, earlier start first. `exclusive[section]` is 1 where one train is allowed.
 * In order of start, whatever begins before a blocking time ends overlaps it, so looking ahead from each row until
 * one begins too late visits overlapping pairs only. Cost: linear in rows and overlapping pairs, sorting aside.
 */
export function sweepClashes(occupations: Occupations, exclusive: Uint8Array, stock: StockPlan): Clashes {
  const { fromMs, toMs, trainOfRow } = occupations;
  const { start, row, time } = occupations.bySection;
  const first: number[] = [];
  const second: number[] = [];
  for (let section = 0; section < exclusive.length; section++) {
    if (exclusive[section] === 0) continue;
    const end = start[section + 1] as number;
    for (let i = start[section] as number; i < end; i++) {
      const a = row[i] as number;
      const to = toMs[a] as number;
      for (let j = i + 1; j < end && (time[j] as number) < to; j++) {
        const b = row[j] as number;
        // an empty blocking time overlaps nothing
        if ((toMs[b] as number) <= (fromMs[b] as number)) continue;
        if (sharesStock(stock, trainOfRow[a] as number, trainOfRow[b] as number)) continue;
        first.push(a);
        second.push(b);
      }
    }
  }
  return { first, second };
}
