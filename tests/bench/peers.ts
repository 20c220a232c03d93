import FlattenTree from "@flatten-js/interval-tree";
import { IntervalTree, type Interval as NodeInterval } from "node-interval-tree";
import staticTree from "static-interval-tree";
import { type Motions, STANDS } from "../../src/planner/motion/motions.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { type StockPlan, sharesStock } from "../../src/planner/stock/stock-plan.ts";

/**
 * The same question put to interval trees from the registry: one tree a section, asked for each blocking time, each pair
 * of different stock counted once. All start from the same columns, a row a train and section, in train order.
 */
export interface PeerInput {
  readonly sections: number;
  readonly section: Int32Array;
  readonly train: Int32Array;
  /** Half-open, never empty. */
  readonly fromMs: Int32Array;
  readonly toMs: Int32Array;
  readonly stock: StockPlan;
}

/** Before: all trains are timed and all sections take one train. */
export function toPeerInput({ policy, sections }: Problem, motions: Motions, stock: StockPlan): PeerInput {
  const { trainOfRow, section, enterMs, clearMs } = motions;
  const blocked = (at: Int32Array, by: number, standMs: Int32Array) =>
    at.map((ms, row) => (ms === STANDS ? (standMs[trainOfRow[row] as number] as number) : ms + by));
  return {
    sections: sections.length,
    section,
    train: trainOfRow,
    fromMs: blocked(enterMs, -policy.setUpMs, stock.standFromMs),
    toMs: blocked(clearMs, policy.releaseMs, stock.standToMs),
    stock,
  };
}

export type Peer = (input: PeerInput) => number;

interface Row {
  readonly row: number;
  readonly start: number;
  readonly end: number;
}

function rowsBySection({ sections, section, fromMs, toMs }: PeerInput): Row[][] {
  const rows: Row[][] = [];
  for (let i = 0; i < sections; i++) rows.push([]);
  for (let row = 0; row < section.length; row++)
    rows[section[row] as number]?.push({
      row,
      start: fromMs[row] as number,
      end: toMs[row] as number,
    });
  return rows;
}

function isPair({ train, stock }: PeerInput, row: number, hit: number): boolean {
  return hit > row && !sharesStock(stock, train[row] as number, train[hit] as number);
}

/** Half-open, as it offers. */
export const staticIntervalTree: Peer = (input) => {
  let pairs = 0;
  for (const rows of rowsBySection(input)) {
    const tree = staticTree.index(rows);
    for (const asked of rows)
      for (const hit of staticTree.matches01(tree, asked)) if (isPair(input, asked.row, hit.row)) pairs++;
  }
  return pairs;
};

/** Closed intervals: [start, end − 1]. */
export const flattenIntervalTree: Peer = (input) => {
  let pairs = 0;
  for (const rows of rowsBySection(input)) {
    const tree = new FlattenTree<Row>();
    for (const row of rows) tree.insert([row.start, row.end - 1], row);
    for (const { row, start, end } of rows)
      for (const hit of tree.search([start, end - 1]) as Row[]) if (isPair(input, row, hit.row)) pairs++;
  }
  return pairs;
};

interface LowHigh extends NodeInterval {
  readonly row: number;
}

/** Closed intervals: [start, end − 1]. */
export const nodeIntervalTree: Peer = (input) => {
  const { section, fromMs, toMs } = input;
  const trees: IntervalTree<LowHigh>[] = [];
  for (let i = 0; i < input.sections; i++) trees.push(new IntervalTree<LowHigh>());
  for (let row = 0; row < section.length; row++)
    trees[section[row] as number]?.insert({
      low: fromMs[row] as number,
      high: (toMs[row] as number) - 1,
      row,
    });
  let pairs = 0;
  for (let row = 0; row < section.length; row++) {
    const tree = trees[section[row] as number] as IntervalTree<LowHigh>;
    for (const hit of tree.search(fromMs[row] as number, (toMs[row] as number) - 1))
      if (isPair(input, row, hit.row)) pairs++;
  }
  return pairs;
};

/** No tree: every pair within a section. */
export const naiveWithinSection: Peer = (input) => {
  let pairs = 0;
  for (const rows of rowsBySection(input))
    for (let i = 0; i < rows.length; i++)
      for (let j = i + 1; j < rows.length; j++) {
        const a = rows[i] as Row;
        const b = rows[j] as Row;
        if (a.start < b.end && b.start < a.end && isPair(input, a.row, b.row)) pairs++;
      }
  return pairs;
};
