import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Problem } from "../problem.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";
import { isShared } from "../track/track.ts";
import { blockingTimes, type Occupations } from "./occupations.ts";

interface Scene {
  readonly problem: Problem;
  readonly motions: Motions;
  readonly stock: StockPlan;
  readonly occupations: Occupations;
}

/**
 * One finding for each longest window in which at least two trains of different stock are in a shared section (by
 * blocking time) and are longer together than it is. Trains linked by common stock count once, with the longest of
 * those present. Trains of the finding: all that are there at some time in the window; measured: the greatest length.
 * Cost: sorting, then for each change the square of the trains present.
 */
export function sharedFindings(scene: Scene): Finding[] {
  const findings: Finding[] = [];
  scene.problem.sections.forEach((section, index) => {
    if (isShared(section)) findings.push(...crowdedWindows(scene, index, section.lengthMm));
  });
  return findings;
}

function crowdedWindows(scene: Scene, section: number, lengthMm: number): Finding[] {
  const stays = staysIn(scene, section);
  const instants = [...new Set(stays.flatMap(({ fromMs, toMs }) => [fromMs, toMs]))].sort((a, b) => a - b);
  const findings: Finding[] = [];
  let window: { startMs: number; endMs: number; mm: number; trains: Set<number> } | null = null;
  let present: Stay[] = [];
  let next = 0;
  for (const ms of instants) {
    present = present.filter(({ toMs }) => toMs > ms);
    for (; stays[next]?.fromMs === ms; next++) present.push(stays[next] as Stay);
    const trains = new Set(present.map(({ train }) => train));
    const mm = crowdMm(scene, [...trains]);
    if (mm > lengthMm) {
      window ??= { startMs: ms, endMs: ms, mm: 0, trains: new Set() };
      window.mm = Math.max(window.mm, mm);
      for (const train of trains) window.trains.add(train);
    } else if (window !== null) {
      findings.push(toFinding(section, lengthMm, { ...window, endMs: ms }));
      window = null;
    }
  }
  return findings;
}

interface Stay {
  readonly train: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Blocking times above 0, by start. After the last instant nobody is present, so every window ends. */
function staysIn({ motions, occupations }: Scene, section: number): Stay[] {
  return blockingTimes(occupations, section)
    .filter(({ fromMs, toMs }) => fromMs < toMs)
    .map(({ pathRow, fromMs, toMs }) => ({ train: motions.trainOfRow[pathRow] as number, fromMs, toMs }));
}

/** Length of all trains together; 0 where no two of them belong to different stock. */
function crowdMm({ stock, motions }: Scene, trains: number[]): number {
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

function toFinding(
  section: number,
  lengthMm: number,
  window: { startMs: number; endMs: number; mm: number; trains: Set<number> },
): Finding {
  return createFinding({
    code: "shared-section-too-full",
    severity: "stops",
    span: { startMs: window.startMs, endMs: window.endMs },
    trains: [...window.trains].sort((a, b) => a - b),
    sections: [section],
    measured: window.mm,
    limit: lengthMm,
    unit: "mm",
  });
}
