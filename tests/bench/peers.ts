import FlattenTree from "@flatten-js/interval-tree";
import { IntervalTree, type Interval as NodeInterval } from "node-interval-tree";
import staticTree from "static-interval-tree";
import type { Motions } from "../../src/planner/motion/motions.ts";
import type { Occupations } from "../../src/planner/occupation/occupations.ts";
import { type StockPlan, sharesStock } from "../../src/planner/stock/stock-plan.ts";

/**
 * The same question put to interval trees from the registry, one tree a section: build it, ask it for each blocking
 * time, count each pair of different stock once. Their input is made for them outside the measured time: ready objects,
 * sorted out by section.
 */
export interface PeerRow {
  readonly row: number;
  readonly train: number;
  /** Half-open, never empty. */
  readonly start: number;
  readonly end: number;
}

export type PeerInput = readonly (readonly PeerRow[])[];

export function toPeerInput(motions: Motions, occupations: Occupations): PeerInput {
  const { start, pathRow, fromMs, toMs } = occupations;
  return Array.from({ length: start.length - 1 }, (_, section) =>
    Array.from({ length: (start[section + 1] as number) - (start[section] as number) }, (_, i) => {
      const at = (start[section] as number) + i;
      return {
        row: pathRow[at] as number,
        train: motions.trainOfRow[pathRow[at] as number] as number,
        start: fromMs[at] as number,
        end: toMs[at] as number,
      };
    })
      .filter(({ start, end }) => start < end)
      // in the order in which trains are listed, as the sweep gets them
      .sort((a, b) => a.row - b.row),
  );
}

export type Peer = (input: PeerInput, stock: StockPlan) => number;

interface LowHigh extends NodeInterval {
  readonly row: number;
  readonly train: number;
}

/** Closed intervals: [start, end − 1]. */
export const nodeIntervalTree: Peer = (input, stock) => {
  let pairs = 0;
  for (const rows of input) {
    const tree = new IntervalTree<LowHigh>();
    for (const { row, train, start, end } of rows) tree.insert({ low: start, high: end - 1, row, train });
    for (const { row, train, start, end } of rows)
      for (const hit of tree.search(start, end - 1))
        if (hit.row > row && !sharesStock(stock, train, hit.train)) pairs++;
  }
  return pairs;
};

/** Closed intervals: [start, end − 1]. */
export const flattenIntervalTree: Peer = (input, stock) => {
  let pairs = 0;
  for (const rows of input) {
    const tree = new FlattenTree<PeerRow>();
    for (const row of rows) tree.insert([row.start, row.end - 1], row);
    for (const { row, train, start, end } of rows)
      for (const hit of tree.search([start, end - 1]) as PeerRow[])
        if (hit.row > row && !sharesStock(stock, train, hit.train)) pairs++;
  }
  return pairs;
};

/** Half-open, as it offers. */
export const staticIntervalTree: Peer = (input, stock) => {
  let pairs = 0;
  for (const rows of input) {
    const tree = staticTree.index(rows);
    for (const asked of rows)
      for (const hit of staticTree.matches01(tree, asked))
        if (hit.row > asked.row && !sharesStock(stock, asked.train, hit.train)) pairs++;
  }
  return pairs;
};

/** No tree: every pair within a section. */
export const naiveWithinSection: Peer = (input, stock) => {
  let pairs = 0;
  for (const rows of input)
    for (let i = 0; i < rows.length; i++)
      for (let j = i + 1; j < rows.length; j++) {
        const a = rows[i] as PeerRow;
        const b = rows[j] as PeerRow;
        if (a.start < b.end && b.start < a.end && !sharesStock(stock, a.train, b.train)) pairs++;
      }
  return pairs;
};
