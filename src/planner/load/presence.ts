import { firstInstantAt, lastInstantAt } from "../motion/instant.ts";
import { type Motions, STANDS } from "../motion/motions.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import type { Stretches } from "./stretches.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;

/** When an item is in which district, half-open; the first `count` rows hold. A district is listed once at a time. */
export interface Presence {
  count: number;
  readonly district: Int32Array;
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
  /** Per district, its latest row; holds only where that row is below `count` and names the district. */
  readonly latest: Int32Array;
}

export function createPresence(stretches: Stretches, districts: number): Presence {
  const rows = stretches.district.length;
  return {
    count: 0,
    district: new Int32Array(rows),
    fromMs: new Int32Array(rows),
    toMs: new Int32Array(rows),
    latest: new Int32Array(districts),
  };
}

/**
 * Overwrites `presence` with where an item (a row of the stock plan) of the train of `stretches` is. It enters a stretch at the last instant with its front at the
 * beginning and leaves it at the first with its rear past the end; where the train starts it is in the first stretch
 * since it draws, and in those it never leaves until it no longer does. An item long enough to reach a district twice at once is
 * in it once. Cost: stretches × calls at worst.
 */
export function findPresence(
  presence: Presence,
  motions: Motions,
  stretches: Stretches,
  stock: StockPlan,
  item: number,
): void {
  presence.count = 0;
  if (stretches.count === 0) return;
  const train = motions.trainOfRow[stretches.firstRow[0] as number] as number;
  const frontMm = stock.frontMm[item] as number;
  const rearMm = frontMm + (stock.lengthMm[item] as number);
  const pathRow = motions.firstRow[train] as number;
  for (let i = 0; i < stretches.count; i++) {
    const firstRow = stretches.firstRow[i] as number;
    const enter =
      firstRow === pathRow ? (stock.drawsFromMs[item] as number) : enterMs(motions, train, firstRow, frontMm);
    if (enter === NEVER) return;
    const leave = leaveMs(motions, train, stretches.lastRow[i] as number, rearMm);
    const fromMs = Math.max(enter, stretches.sinceMs[i] as number);
    const toMs = Math.min(
      leave === NEVER ? (stock.drawsToMs[item] as number) : leave,
      stretches.untilMs[i] as number,
    );
    if (fromMs < toMs) addPresence(presence, stretches.district[i] as number, fromMs, toMs);
  }
}

/** When what is `behindMm` behind the head enters the section of a row; the head's own instant is there already. */
function enterMs(motions: Motions, train: number, row: number, behindMm: number): number {
  if (behindMm === 0) return motions.enterMs[row] as number;
  return lastInstantAt(motions, train, (motions.endMm[row - 1] as number) + behindMm);
}

/** When what is `behindMm` behind the head leaves the section of a row; the tail's own instant is there already. */
function leaveMs(motions: Motions, train: number, row: number, behindMm: number): number {
  if (behindMm === motions.lengthMm[train]) return motions.clearMs[row] as number;
  return firstInstantAt(motions, train, (motions.endMm[row] as number) + behindMm);
}

function addPresence(presence: Presence, district: number, fromMs: number, toMs: number): void {
  const latest = presence.latest[district] as number;
  const open = latest < presence.count && presence.district[latest] === district;
  if (open && fromMs <= (presence.toMs[latest] as number)) {
    presence.toMs[latest] = Math.max(toMs, presence.toMs[latest] as number);
    return;
  }
  const row = presence.count;
  presence.district[row] = district;
  presence.fromMs[row] = fromMs;
  presence.toMs[row] = toMs;
  presence.latest[district] = row;
  presence.count = row + 1;
}
