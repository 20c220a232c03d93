import type { District } from "../problem.ts";
import type { RestartReport, StallReport } from "../result.ts";
import type { LoadScene } from "./digital-load.ts";
import { groupForRestart, type RestartUnit } from "./restart-groups.ts";
import { returningMa, type SurgeSweep } from "./surges.ts";

/** What one stalled locomotive does to a district at worst; null where no locomotive is ever in it. */
export function reportStall(scene: LoadScene, { surges }: SurgeSweep, district: number): StallReport | null {
  const row = surges.stallItem[district] as number;
  if (row < 0) return null;
  return {
    ma: surges.stallMa[district] as number,
    atMs: surges.stallAtMs[district] as number,
    // locomotives come before rakes
    locomotive: scene.stock.item[row] as number,
    train: trainOf(scene, row),
  };
}

/**
 * What happens when power returns to a district at the worst instant; null where nothing is ever in it. It holds where all
 * inrush together is within the breaker, or over before the breaker opens and what is drawn from then on within it.
 */
export function reportRestart(scene: LoadScene, sweep: SurgeSweep, district: number): RestartReport | null {
  const inrushMa = sweep.surges.inrushMa[district] as number;
  const atMs = sweep.surges.inrushAtMs[district] as number;
  if (inrushMa === 0) return null;
  const { breakerMa, tripDelayMs } = scene.problem.districts[district] as District;
  const isWithin = inrushMa <= breakerMa;
  const isBrief = scene.problem.policy.inrushMs <= tripDelayMs;
  const units = unitsAt(scene, sweep, district, atMs);
  const trains = units.map(({ train }) => train);
  const drawnMa = units.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
  const holds = isWithin || (isBrief && drawnMa <= breakerMa);
  const told = { inrushMa, atMs, trains, holds, isWithin };
  if (holds) return { ...told, groups: [trains], proven: true, tooBig: [] };
  // of a surge too brief to count only what follows it is left
  const lasting = isBrief ? units.map((unit) => ({ ...unit, inrushMa: unit.drawsMa })) : units;
  return { ...told, ...groupForRestart(lasting, breakerMa) };
}

/** Trains with items in the district at an instant, by index. */
function unitsAt(scene: LoadScene, sweep: SurgeSweep, district: number, ms: number): RestartUnit[] {
  const units = new Map<number, RestartUnit>();
  for (const { item, drawsMa } of sweep.presentAt(district, ms)) {
    const inrushMa = returningMa(scene.stock.inrushMa[item] as number, drawsMa);
    if (inrushMa === 0) continue;
    const train = trainOf(scene, item);
    const before = units.get(train) ?? { train, inrushMa: 0, drawsMa: 0 };
    units.set(train, {
      train,
      inrushMa: before.inrushMa + inrushMa,
      drawsMa: before.drawsMa + drawsMa,
    });
  }
  return [...units.values()].sort((a, b) => a.train - b.train);
}

/** The train that an item's row belongs to, by halving. */
function trainOf({ stock: { firstItem } }: LoadScene, row: number): number {
  let low = 0;
  let high = firstItem.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((firstItem[middle] as number) <= row) low = middle;
    else high = middle;
  }
  return low;
}
