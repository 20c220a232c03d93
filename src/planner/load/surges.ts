import { sortInGroups } from "../order/sort-in-groups.ts";
import type { LoadScene } from "./digital-load.ts";
import { type ItemEvents, itemEvents, LEAVES } from "./item-events.ts";

/** The worst that a district meets beyond its plain load. */
export interface Surges {
  /** The plain load at its greatest, and when first. */
  readonly loadMa: Int32Array;
  readonly loadAtMs: Int32Array;
  /** One locomotive stalls: the most the district then carries, when, and that item's row; row −1: none is ever there. */
  readonly stallMa: Int32Array;
  readonly stallAtMs: Int32Array;
  readonly stallItem: Int32Array;
  /** Everything comes up at once: the greatest sum of what that takes, and when first. See `returningMa`. */
  readonly inrushMa: Int32Array;
  readonly inrushAtMs: Int32Array;
}

/** An item in a district at an instant: its row in the stock plan, and what it draws. */
export interface Present {
  readonly item: number;
  readonly drawsMa: number;
}

/** Surges of all districts, and who was where, to ask again. */
export interface SurgeSweep {
  readonly surges: Surges;
  /** Items in a district at an instant, by row. Cost: linear in the district's events. */
  presentAt(district: number, ms: number): Present[];
}

/**
 * Design section 5: one locomotive stalls, the maximum over t of d(t) + the largest (stall − what it draws then) among
 * the locomotives in d at t; re-energising, the maximum over t of the sum of inrush (`returningMa`). Of equal instants the
 * first; of equal locomotives the first on the roster. Cost: sorting the items' events; the locomotives of a district are
 * looked through only at instants that could be the worst so far.
 */
export function sweepSurges(scene: LoadScene): SurgeSweep {
  const events = itemEvents(scene);
  const districts = scene.problem.districts.length;
  const sorted = sortInGroups(events.count, events.district.subarray(0, events.count), districts, events.ms);
  const surges: Surges = {
    loadMa: new Int32Array(districts),
    loadAtMs: new Int32Array(districts).fill(scene.problem.slot.startMs),
    stallMa: new Int32Array(districts),
    stallAtMs: new Int32Array(districts),
    stallItem: new Int32Array(districts).fill(-1),
    inrushMa: new Int32Array(districts),
    inrushAtMs: new Int32Array(districts).fill(scene.problem.slot.startMs),
  };
  const draws = new Int32Array(scene.stock.item.length);
  for (let district = 0; district < districts; district++)
    sweepDistrict(scene, events, sorted, surges, district, draws);
  return { surges, presentAt: (district, ms) => presentAt(events, sorted, district, ms) };
}

/**
 * What an item takes as power returns: its inrush, and never less than it then draws on. Lamps whose surge nobody wrote
 * down have an inrush of 0 and light up all the same.
 */
export const returningMa = (inrushMa: number, drawsMa: number) => Math.max(inrushMa, drawsMa);

type Sorted = ReturnType<typeof sortInGroups>;

function sweepDistrict(
  { stock }: LoadScene,
  events: ItemEvents,
  { start, row, time }: Sorted,
  surges: Surges,
  district: number,
  draws: Int32Array,
): void {
  const { stallMa, inrushMa } = stock;
  const end = start[district + 1] as number;
  const here: number[] = [];
  let load = 0;
  let inrush = 0;
  // no less than any locomotive that was ever here can add
  let mostStall = 0;
  let worst = 0;
  for (let i = start[district] as number; i < end; ) {
    const ms = time[i] as number;
    for (; i < end && time[i] === ms; i++) {
      const item = events.item[row[i] as number] as number;
      const drawn = events.drawsMa[row[i] as number] as number;
      const at = here.indexOf(item);
      const surge = inrushMa[item] as number;
      if (at >= 0) {
        load -= draws[item] as number;
        inrush -= returningMa(surge, draws[item] as number);
      }
      if (drawn === LEAVES) {
        here.splice(at, 1);
        continue;
      }
      draws[item] = drawn;
      load += drawn;
      inrush += returningMa(surge, drawn);
      if (at < 0) {
        here.push(item);
        mostStall = Math.max(mostStall, stallMa[item] as number);
      }
    }
    if (load > (surges.loadMa[district] as number)) {
      surges.loadMa[district] = load;
      surges.loadAtMs[district] = ms;
    }
    if (inrush > (surges.inrushMa[district] as number)) {
      surges.inrushMa[district] = inrush;
      surges.inrushAtMs[district] = ms;
    }
    if (surges.stallItem[district] !== -1 && load + mostStall <= worst) continue;
    for (const item of here) {
      const stall = stallMa[item] as number;
      if (stall < 0) continue;
      const then = load + stall - (draws[item] as number);
      const best = surges.stallItem[district] as number;
      if (
        best !== -1 &&
        (then < worst ||
          (then === worst && !comesBefore(stock, item, best, surges.stallAtMs[district] === ms)))
      )
        continue;
      worst = then;
      surges.stallMa[district] = then;
      surges.stallAtMs[district] = ms;
      surges.stallItem[district] = item;
    }
  }
}

/** Of equal loads that of the first instant stays; at one instant the first locomotive on the roster is told of. */
function comesBefore(
  { item, drawsFromMs, drawsToMs }: LoadScene["stock"],
  row: number,
  best: number,
  sameInstant: boolean,
): boolean {
  const by =
    (item[row] as number) - (item[best] as number) ||
    (drawsFromMs[row] as number) - (drawsFromMs[best] as number) ||
    (drawsToMs[row] as number) - (drawsToMs[best] as number);
  return sameInstant && (by < 0 || (by === 0 && row < best));
}

function presentAt(
  events: ItemEvents,
  { start, row, time }: Sorted,
  district: number,
  ms: number,
): Present[] {
  const here = new Map<number, number>();
  const end = start[district + 1] as number;
  for (let i = start[district] as number; i < end && (time[i] as number) <= ms; i++) {
    const item = events.item[row[i] as number] as number;
    const drawn = events.drawsMa[row[i] as number] as number;
    if (drawn === LEAVES) here.delete(item);
    else here.set(item, drawn);
  }
  return [...here].map(([item, drawsMa]) => ({ item, drawsMa })).sort((a, b) => a.item - b.item);
}
