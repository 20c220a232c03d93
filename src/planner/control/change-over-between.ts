import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { Problem, Section } from "../problem.ts";
import { goesMs } from "../stock/handed-on.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { ALWAYS, type Parts } from "./parts.ts";

/**
 * Stock that arrives digitally in a changeover section and leaves it analog as another working is changed over while it
 * stands there, as within one working: at setUp before the departure, not before the arrival. Writes that into the last
 * part of the one and the first of the other. Cost: linear in items.
 */
export function changeOverBetween(problem: Problem, motions: Motions, stock: StockPlan, parts: Parts): void {
  if (!parts.analog.includes(1)) return;
  for (let train = 0; train < motions.timed.length; train++)
    changeOverTrain(problem, motions, stock, parts, train);
}

/** The same at both ends of one train. @returns whether that changes anything */
export function changeOverTrain(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  parts: Parts,
  train: number,
): boolean {
  const first = parts.firstPart[train] as number;
  const last = (parts.firstPart[train + 1] as number) - 1;
  if (motions.timed[train] === 0 || last < first) return false;
  let sinceMs = -ALWAYS;
  let untilMs = ALWAYS;
  for (let row = stock.firstItem[train] as number; row < (stock.firstItem[train + 1] as number); row++) {
    const [previous, next] = [stock.previous[row] as number, stock.next[row] as number];
    if (previous >= 0)
      sinceMs = Math.max(sinceMs, switchMs(problem, motions, parts, previous, train) ?? -ALWAYS);
    if (next >= 0) untilMs = Math.min(untilMs, switchMs(problem, motions, parts, train, next) ?? ALWAYS);
  }
  const changes = parts.sinceMs[first] !== sinceMs || parts.untilMs[last] !== untilMs;
  parts.sinceMs[first] = sinceMs;
  parts.untilMs[last] = untilMs;
  return changes;
}

/** When the section between two workings of the same stock turns from digital to analog; null: it does not. */
function switchMs(
  problem: Problem,
  motions: Motions,
  parts: Parts,
  before: number,
  after: number,
): number | null {
  if (parts.analog[(parts.firstPart[before + 1] as number) - 1] !== 0) return null;
  if (parts.analog[parts.firstPart[after] as number] !== 1) return null;
  const here = motions.section[(motions.firstRow[before + 1] as number) - 1] as number;
  const { control, lengthMm } = problem.sections[here] as Section;
  const longestMm = Math.max(motions.lengthMm[before] as number, motions.lengthMm[after] as number);
  const isHere = motions.section[motions.firstRow[after] as number] === here;
  if (!isHere || control !== "changeover" || lengthMm < longestMm) return null;
  const arrives = lastArrival(motions, before);
  const departs = firstDeparture(motions, after);
  if (departs < arrives || goesMs(problem, motions, before, after) < departs) return null;
  return Math.max(arrives, departs - problem.policy.setUpMs);
}
