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
 * those present. Cost: sorting, then for each change the square of the trains present.
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
    const mm = togetherMm(motions, stock, [...trains]);
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

/** Length of all trains together; 0 where no two of them belong to different stock. */
function togetherMm(motions: Motions, stock: StockPlan, trains: number[]): number {
  const allOneStock = trains.every((a, i) => trains.every((b, j) => j <= i || sharesStock(stock, a, b)));
  if (allOneStock) return 0;
  let sum = 0;
  let left = trains;
  while (left.length > 0) {
    const linked = linkedTo(stock, left[0] as number, left);
    sum += Math.max(...linked.map((train) => motions.lengthMm[train] as number));
    left = left.filter((train) => !linked.includes(train));
  }
  return sum;
}

/** The trains that common stock links to one of them, over others where need be. */
function linkedTo(stock: StockPlan, train: number, trains: readonly number[]): number[] {
  const linked = [train];
  for (let i = 0; i < linked.length; i++)
    for (const other of trains)
      if (!linked.includes(other) && sharesStock(stock, linked[i] as number, other)) linked.push(other);
  return linked;
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
