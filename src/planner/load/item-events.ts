import type { LoadScene } from "./digital-load.ts";
import { findMoves } from "./moves.ts";
import { findPresence } from "./presence.ts";
import { findStretches } from "./stretches.ts";

/** In `drawsMa`: the item leaves the district. */
export const LEAVES = -1;

/** What items do in districts: from `ms[i]` on item row `item[i]` of the stock plan draws `drawsMa[i]` in `district[i]`. */
export interface ItemEvents {
  count: number;
  district: Int32Array;
  ms: Int32Array;
  /** Row of the stock plan. */
  item: Int32Array;
  drawsMa: Int32Array;
}

/**
 * When every locomotive and rake comes into which district, stops or goes on there, and leaves it; those that draw nothing
 * too. Nothing before the slot's start. Design section 5. Cost: items × path entries.
 */
export function itemEvents(scene: LoadScene): ItemEvents {
  const { motions, stock, stretches, moves } = scene;
  const capacity = motions.section.length;
  const events: ItemEvents = {
    count: 0,
    district: new Int32Array(capacity),
    ms: new Int32Array(capacity),
    item: new Int32Array(capacity),
    drawsMa: new Int32Array(capacity),
  };
  for (let train = 0; train < motions.timed.length; train++) {
    if (motions.timed[train] === 0) continue;
    findStretches(stretches, motions, scene.parts, scene.track.district, train);
    if (stretches.count === 0) continue;
    findMoves(moves, motions, train);
    const end = stock.firstItem[train + 1] as number;
    for (let item = stock.firstItem[train] as number; item < end; item++) {
      findPresence(scene.presence, motions, stretches, stock, item);
      addItem(scene, events, item);
    }
  }
  return events;
}

function addItem({ presence, moves, stock, problem }: LoadScene, events: ItemEvents, item: number): void {
  const { startMs } = problem.slot;
  const runningMa = stock.runningMa[item] as number;
  const standingMa = stock.standingMa[item] as number;
  reserve(events, presence.count * (2 * moves.count + 2));
  for (let i = 0; i < presence.count; i++) {
    const district = presence.district[i] as number;
    const fromMs = Math.max(presence.fromMs[i] as number, startMs);
    const untilMs = presence.toMs[i] as number;
    if (fromMs >= untilMs) continue;
    let move = 0;
    while (move < moves.count && (moves.toMs[move] as number) <= fromMs) move++;
    const isMoving = move < moves.count && (moves.fromMs[move] as number) <= fromMs;
    put(events, district, fromMs, item, isMoving ? runningMa : standingMa);
    for (; move < moves.count && runningMa !== standingMa; move++) {
      const goesMs = moves.fromMs[move] as number;
      const stopsMs = moves.toMs[move] as number;
      if (goesMs >= untilMs) break;
      if (goesMs > fromMs) put(events, district, goesMs, item, runningMa);
      if (stopsMs >= untilMs) break;
      put(events, district, stopsMs, item, standingMa);
    }
    put(events, district, untilMs, item, LEAVES);
  }
}

function put(events: ItemEvents, district: number, ms: number, item: number, drawsMa: number): void {
  const at = events.count++;
  events.district[at] = district;
  events.ms[at] = ms;
  events.item[at] = item;
  events.drawsMa[at] = drawsMa;
}

function reserve(events: ItemEvents, more: number): void {
  if (events.count + more <= events.ms.length) return;
  const capacity = 2 * events.ms.length + more;
  events.district = enlarged(events.district, capacity);
  events.ms = enlarged(events.ms, capacity);
  events.item = enlarged(events.item, capacity);
  events.drawsMa = enlarged(events.drawsMa, capacity);
}

function enlarged(from: Int32Array, capacity: number): Int32Array {
  const to = new Int32Array(capacity);
  to.set(from);
  return to;
}
