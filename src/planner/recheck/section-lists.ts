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

/** Start of a blocking time that is empty, beyond every end that a real one has; its end is −NEVER_FROM. */
const NEVER_FROM = 0x7fff_ffff;

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
  const blocked = new Int32Array(2 * section.length);
  for (let at = 0; at < blocked.length; at += 2) setEmpty(blocked, at);
  return { start, placeOfRow, rowAt, blocked, clashes: 0 };
}

function setEmpty(blocked: Int32Array, at: number): void {
  blocked[at] = NEVER_FROM;
  blocked[at + 1] = -NEVER_FROM;
}

/**
 * Gives a row another blocking time, maybe an empty one, and counts anew the clashes it is in, if its section takes one
 * train. Cost: one look at each train that the section sees.
 * @returns whether it is another
 */
export function setBlocked(
  lists: SectionLists,
  { motions, stock, track }: { readonly motions: Motions; readonly stock: StockPlan; readonly track: Track },
  row: number,
  fromMs: number,
  toMs: number,
): boolean {
  const { blocked } = lists;
  const section = motions.section[row] as number;
  const own = 2 * (lists.placeOfRow[row] as number);
  const oldFrom = blocked[own] as number;
  const oldTo = blocked[own + 1] as number;
  if (oldFrom === fromMs && oldTo === toMs) return false;
  // so that it is not compared with itself
  setEmpty(blocked, own);
  const newFrom = fromMs < toMs ? fromMs : NEVER_FROM;
  const newTo = fromMs < toMs ? toMs : -NEVER_FROM;
  if (track.exclusive[section] === 1) {
    const end = 2 * (lists.start[section + 1] as number);
    for (let at = 2 * (lists.start[section] as number); at < end; at += 2) {
      const from = blocked[at] as number;
      const to = blocked[at + 1] as number;
      // counted instead of branched on, since branches would be guesses
      const did = Number(from < oldTo) & Number(oldFrom < to);
      const does = Number(from < newTo) & Number(newFrom < to);
      if (did === does) continue;
      const other = motions.trainOfRow[lists.rowAt[at >> 1] as number] as number;
      if (!sharesStock(stock, motions.trainOfRow[row] as number, other)) lists.clashes += does - did;
    }
  }
  blocked[own] = newFrom;
  blocked[own + 1] = newTo;
  return oldFrom !== newFrom || oldTo !== newTo;
}
