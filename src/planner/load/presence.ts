import { firstInstantAt, lastInstantAt } from "../motion/instant.ts";
import { type Motions, STANDS } from "../motion/motions.ts";
import type { Stretches } from "./stretches.ts";

/** A locomotive or rake in its train, with the time for which its draw belongs to this working. */
export interface Item {
  /** From the train's head to the item's front. */
  readonly frontMm: number;
  readonly lengthMm: number;
  readonly runningMa: number;
  readonly standingMa: number;
  readonly fromMs: number;
  readonly toMs: number;
}

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
 * Overwrites `presence` with where the item is. It enters a stretch at the last instant with its front at the
 * beginning and leaves it at the first with its rear past the end; where the train starts it is in the first stretch
 * since `fromMs`, and in those it never leaves until `toMs`. An item long enough to reach a district twice at once is
 * in it once. Cost: stretches × calls at worst.
 */
export function findPresence(
  presence: Presence,
  motions: Motions,
  stretches: Stretches,
  item: Item,
  train: number,
): void {
  presence.count = 0;
  for (let i = 0; i < stretches.count; i++) {
    const startMm = stretches.startMm[i] as number;
    const enter = startMm < 0 ? item.fromMs : lastInstantAt(motions, train, startMm + item.frontMm);
    if (enter === STANDS) return;
    const leave = firstInstantAt(
      motions,
      train,
      (stretches.endMm[i] as number) + item.frontMm + item.lengthMm,
    );
    const fromMs = Math.max(enter, stretches.sinceMs[i] as number);
    const toMs = Math.min(leave === STANDS ? item.toMs : leave, stretches.untilMs[i] as number);
    if (fromMs < toMs) addPresence(presence, stretches.district[i] as number, fromMs, toMs);
  }
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
