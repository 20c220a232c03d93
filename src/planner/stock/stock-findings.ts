import { createFinding, type Finding } from "../findings.ts";
import { firstDeparture, lastArrival, type Motions } from "../motion/motions.ts";
import type { Problem, Section } from "../problem.ts";
import { beginsWhereEnded } from "./handed-on.ts";
import type { StockPlan } from "./stock-plan.ts";

/**
 * Items that two trains want at once (the next working departs before the one before arrives), and items that are not
 * where they are wanted next (the next working begins in a section that the train did not cover when it ended). Stock
 * at another place, or on the open line, stops; at the same place on another road it warns. Moving by hand between
 * two staging roads is allowed. Items of one pair of trains make one finding of a kind. Cost: linear in items.
 */
export function stockFindings(problem: Problem, motions: Motions, stock: StockPlan): Finding[] {
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    const end = stock.firstItem[train + 1] as number;
    for (let row = stock.firstItem[train] as number; row < end; row++) {
      const before = stock.previous[row] as number;
      if (before < 0 || firstFrom(stock, train, before) !== row) continue;
      const finding = judge(problem, motions, stock, before, train);
      if (finding !== null) findings.push(finding);
    }
  }
  return findings;
}

/** The first of the train's items that `before` brings it. */
function firstFrom(stock: StockPlan, train: number, before: number): number {
  let row = stock.firstItem[train] as number;
  while (stock.previous[row] !== before) row++;
  return row;
}

function judge(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  before: number,
  after: number,
): Finding | null {
  const arrives = lastArrival(motions, before);
  const departs = firstDeparture(motions, after);
  if (departs < arrives)
    return createFinding({
      ...itemsBetween(problem, stock, before, after),
      code: "stock-in-two-trains",
      severity: "stops",
      span: { startMs: departs, endMs: arrives },
      measured: arrives - departs,
      limit: 0,
      unit: "ms",
    });
  const here = motions.section[(motions.firstRow[before + 1] as number) - 1] as number;
  const there = motions.section[motions.firstRow[after] as number] as number;
  if (beginsWhereEnded(motions, before, after) || isByHand(problem, here, there)) return null;
  return createFinding({
    ...itemsBetween(problem, stock, before, after),
    code: "stock-elsewhere",
    severity: isSamePlace(problem, here, there) ? "warns" : "stops",
    span: { startMs: arrives, endMs: Math.max(departs, arrives + 1) },
    sections: [here, there],
  });
}

function itemsBetween(problem: Problem, stock: StockPlan, before: number, after: number) {
  const locomotives: number[] = [];
  const rakes: number[] = [];
  const end = stock.firstItem[after + 1] as number;
  for (let row = stock.firstItem[after] as number; row < end; row++) {
    if (stock.previous[row] !== before) continue;
    const item = stock.item[row] as number;
    if (item < problem.locomotives.length) locomotives.push(item);
    else rakes.push(item - problem.locomotives.length);
  }
  return { trains: [before, after], locomotives, rakes };
}

function isByHand(problem: Problem, here: number, there: number): boolean {
  return (problem.sections[here] as Section).handStaging && (problem.sections[there] as Section).handStaging;
}

function isSamePlace(problem: Problem, here: number, there: number): boolean {
  const place = (problem.sections[here] as Section).place;
  return place >= 0 && place === (problem.sections[there] as Section).place;
}
