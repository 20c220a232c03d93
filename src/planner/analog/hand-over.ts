import type { PlannerPolicy } from "../problem.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import type { Stay } from "./stays.ts";

/**
 * Lets a section pass from one stay to the next of the same stock without two feeds meeting: the engine of an
 * arrival that leaves again as another train, or a train that comes back. Where two such stays overlap, the
 * earlier ends and the later begins at one instant, as near to what both ask as their moves allow. Stays of
 * different stock are left alone (that is a clash of the section), and so are two that move at one time (stock in
 * two trains). Returns the stays in the order given. Cost O(n log n) where few stays of a section overlap.
 */
export function handOver(policy: PlannerPolicy, stays: readonly Stay[], stock: StockPlan): Stay[] {
  const result = [...stays];
  const bySection = new Map<number, number[]>();
  for (const [index, { section }] of stays.entries()) {
    const here = bySection.get(section);
    if (here) here.push(index);
    else bySection.set(section, [index]);
  }
  // no stay begins longer before its move: what ended before that is out of every later one's way
  let longestLead = 0;
  for (const { span, moving } of stays) longestLead = Math.max(longestLead, moving.startMs - span.startMs);
  for (const here of bySection.values()) {
    const at = (index: number) => result[index] as Stay;
    here.sort(
      (a, b) =>
        at(a).moving.startMs - at(b).moving.startMs || at(a).moving.endMs - at(b).moving.endMs || a - b,
    );
    let open: number[] = [];
    for (const later of here) {
      const earliestMs = at(later).moving.startMs - longestLead;
      open = open.filter((earlier) => at(earlier).span.endMs > earliestMs);
      for (const earlier of open.toReversed()) separate(policy, result, earlier, later, stock);
      open.push(later);
    }
  }
  return result;
}

function separate(
  policy: PlannerPolicy,
  stays: Stay[],
  earlier: number,
  later: number,
  stock: StockPlan,
): void {
  const a = stays[earlier] as Stay;
  const b = stays[later] as Stay;
  const overlap = a.span.endMs > b.span.startMs && b.span.endMs > a.span.startMs;
  if (!overlap || a.moving.endMs > b.moving.startMs || !sharesStock(stock, a.train, b.train)) return;
  // within one and the same ms neither is the earlier
  if (a.train !== b.train && a.moving.startMs === b.moving.endMs) return;
  const atMs = switchingMs(policy, a, b);
  stays[earlier] = { ...a, span: { startMs: a.span.startMs, endMs: Math.min(a.span.endMs, atMs) } };
  stays[later] = { ...b, span: { startMs: Math.max(b.span.startMs, atMs), endMs: b.span.endMs } };
}

/**
 * Between the release of the one and the set-up for the other where there is time for both, else between their
 * moves.
 */
function switchingMs({ setUpMs, releaseMs }: PlannerPolicy, a: Stay, b: Stay): number {
  const released = a.moving.endMs + releaseMs;
  const setUp = b.moving.startMs - setUpMs;
  if (released <= setUp) return clamp(b.span.startMs, released, setUp);
  return clamp(setUp, a.moving.endMs, b.moving.startMs);
}

function clamp(ms: number, least: number, most: number): number {
  return Math.min(Math.max(ms, least), most);
}
