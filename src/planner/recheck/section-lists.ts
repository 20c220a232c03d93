import type { Motions } from "../motion/motions.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import type { Track } from "../track/track.ts";

/**
 * Blocking times section by section, and how many pairs of different stock clash. Which trains a section sees never
 * changes, only when; so each row keeps its place, and a place is two numbers. Rows as in Motions.
 */
export interface SectionLists {
  /** Places of section s: `start[s]` to before `start[s + 1]`. */
  readonly start: Int32Array;
  readonly placeOfRow: Int32Array;
  readonly rowAt: Int32Array;
  /** By place, start and end in turn; half-open, ms. */
  readonly blocked: Int32Array;
  clashes: number;
}

/** All blocking times empty. */
export function createSectionLists(motions: Motions, sections: number): SectionLists {
  const { section } = motions;
  const start = new Int32Array(sections + 1);
  for (const s of section) start[s + 1] = (start[s + 1] as number) + 1;
  for (let s = 0; s < sections; s++) start[s + 1] = (start[s + 1] as number) + (start[s] as number);
  const next = start.slice();
  const placeOfRow = new Int32Array(section.length);
  const rowAt = new Int32Array(section.length);
  for (let row = 0; row < section.length; row++) {
    const place = next[section[row] as number] as number;
    next[section[row] as number] = place + 1;
    placeOfRow[row] = place;
    rowAt[place] = row;
  }
  return { start, placeOfRow, rowAt, blocked: new Int32Array(2 * section.length), clashes: 0 };
}

/**
 * Gives a row another blocking time and counts anew the clashes it is in, if its section takes one train. Cost: one
 * look at each train that the section sees.
 * @returns whether it is another
 */
export function setBlocked(
  lists: SectionLists,
  motions: Motions,
  stock: StockPlan,
  track: Track,
  row: number,
  fromMs: number,
  toMs: number,
): boolean {
  const { start, blocked } = lists;
  const section = motions.section[row] as number;
  const place = lists.placeOfRow[row] as number;
  const oldFrom = blocked[2 * place] as number;
  const oldTo = blocked[2 * place + 1] as number;
  if (oldFrom === fromMs && oldTo === toMs) return false;
  // empty while the others are compared, so that it is not compared with itself
  blocked[2 * place] = 0;
  blocked[2 * place + 1] = 0;
  if (track.exclusive[section] === 1) {
    const end = 2 * (start[section + 1] as number);
    for (let at = 2 * (start[section] as number); at < end; at += 2) {
      const from = blocked[at] as number;
      const to = blocked[at + 1] as number;
      const did = Math.max(from, oldFrom) < Math.min(to, oldTo);
      const does = Math.max(from, fromMs) < Math.min(to, toMs);
      if (did === does) continue;
      const other = motions.trainOfRow[lists.rowAt[at >> 1] as number] as number;
      if (!sharesStock(stock, motions.trainOfRow[row] as number, other)) lists.clashes += does ? 1 : -1;
    }
  }
  blocked[2 * place] = fromMs;
  blocked[2 * place + 1] = toMs;
  return true;
}
