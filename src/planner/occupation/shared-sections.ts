import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Problem } from "../problem.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import { isShared } from "../track/track.ts";
import { blockingTimes, type Occupations } from "./occupations.ts";

/** A train in a section, half-open, ms, never empty. */
export interface Stay {
  readonly train: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** A time in which trains of different stock are longer together than the section they are in. */
export interface Crowd {
  readonly startMs: number;
  readonly endMs: number;
  /** Their greatest length. */
  readonly mm: number;
  /** All that are there at some time in it. */
  readonly trains: ReadonlySet<number>;
}

/**
 * One finding for each longest window in which at least two trains of different stock are in a shared section (by
 * blocking time) and are longer together than it is. Trains linked by common stock count once, with the longest of
 * those present. Cost: sorting, then for each change the trains present.
 */
export function sharedFindings(
  problem: Problem,
  motions: Motions,
  occupations: Occupations,
  stock: StockPlan,
): Finding[] {
  const findings: Finding[] = [];
  for (let index = 0; index < problem.sections.length; index++) {
    const section = problem.sections[index];
    if (section === undefined || !isShared(section)) continue;
    const stays = staysIn(motions, occupations, index);
    for (const crowd of findCrowds(motions, stock, section.lengthMm, stays))
      findings.push(toFinding(index, section.lengthMm, crowd));
  }
  return findings;
}

/** Before: stays are in order of start. */
export function findCrowds(
  motions: Motions,
  stock: StockPlan,
  lengthMm: number,
  stays: readonly Stay[],
): Crowd[] {
  const instants = [...new Set(stays.flatMap(({ fromMs, toMs }) => [fromMs, toMs]))].sort((a, b) => a - b);
  const crowds: Crowd[] = [];
  let crowd: { startMs: number; mm: number; trains: Set<number> } | null = null;
  let present: Stay[] = [];
  let next = 0;
  for (const ms of instants) {
    present = present.filter(({ toMs }) => toMs > ms);
    for (; stays[next]?.fromMs === ms; next++) present.push(stays[next] as Stay);
    const trains = new Set(present.map(({ train }) => train));
    const mm = togetherMm(motions, stock, [...trains], lengthMm);
    if (mm > lengthMm) {
      crowd ??= { startMs: ms, mm: 0, trains: new Set() };
      crowd.mm = Math.max(crowd.mm, mm);
      for (const train of trains) crowd.trains.add(train);
    } else if (crowd !== null) {
      crowds.push({ ...crowd, endMs: ms });
      crowd = null;
    }
  }
  // after the last instant nobody is present, so every crowd has ended
  return crowds;
}

function staysIn(motions: Motions, occupations: Occupations, section: number): Stay[] {
  return blockingTimes(occupations, section)
    .filter(({ fromMs, toMs }) => fromMs < toMs)
    .map(({ pathRow, fromMs, toMs }) => ({ train: motions.trainOfRow[pathRow] as number, fromMs, toMs }));
}

/**
 * Length of all trains together, those that common stock links counting once, with the longest; 0 where that is more than
 * `lengthMm` but no two of them belong to different stock. Cost: linear in their items but for that last question.
 */
function togetherMm(motions: Motions, stock: StockPlan, trains: readonly number[], lengthMm: number): number {
  const groups = linkByStock(stock, trains);
  const longest = new Map<number, number>();
  trains.forEach((train, i) => {
    const group = groups[i] as number;
    longest.set(group, Math.max(longest.get(group) ?? 0, motions.lengthMm[train] as number));
  });
  const sum = [...longest.values()].reduce((total, mm) => total + mm, 0);
  return sum > lengthMm && longest.size === 1 && isOneStock(stock, trains) ? 0 : sum;
}

/** For each train the number of its group: trains that common stock links, over others where need be. */
function linkByStock({ firstItem, item }: StockPlan, trains: readonly number[]): number[] {
  const parent = trains.map((_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] as number;
    parent[i] = root;
    return root;
  };
  const holder = new Map<number, number>();
  trains.forEach((train, i) => {
    for (let at = firstItem[train] as number; at < (firstItem[train + 1] as number); at++) {
      const other = holder.get(item[at] as number);
      if (other === undefined) holder.set(item[at] as number, i);
      else parent[rootOf(i)] = rootOf(other);
    }
  });
  return parent.map((_, i) => rootOf(i));
}

/** Whether each two of them have stock in common. Trains of the very same stock are asked about once. */
function isOneStock(stock: StockPlan, trains: readonly number[]): boolean {
  const { firstItem, item } = stock;
  const stockOf = (train: number) => item.subarray(firstItem[train], firstItem[train + 1]).join();
  const distinct = [...new Map(trains.map((train) => [stockOf(train), train])).values()];
  return distinct.every((a, i) => distinct.every((b, j) => j <= i || sharesStock(stock, a, b)));
}

function toFinding(section: number, lengthMm: number, crowd: Crowd): Finding {
  return createFinding({
    code: "shared-section-too-full",
    severity: "stops",
    span: { startMs: crowd.startMs, endMs: crowd.endMs },
    trains: [...crowd.trains].sort((a, b) => a - b),
    sections: [section],
    measured: crowd.mm,
    limit: lengthMm,
    unit: "mm",
  });
}
