import { type Motions, STANDS } from "../motion/motions.ts";
import type { Occupation } from "../result.ts";
import { blockingTimes, type Occupations } from "./occupations.ts";

/** The blocking times for people to look at: by section, then start. Trains that are not timed have none. */
export function reportOccupations(motions: Motions, occupations: Occupations): Occupation[] {
  const report: Occupation[] = [];
  for (let section = 0; section + 1 < occupations.start.length; section++)
    for (const { pathRow, fromMs, toMs } of blockingTimes(occupations, section)) {
      const train = motions.trainOfRow[pathRow] as number;
      report.push({
        section,
        train,
        pathEntry: pathRow - (motions.firstRow[train] as number),
        enterMs: instant(motions.enterMs[pathRow] as number),
        clearMs: instant(motions.clearMs[pathRow] as number),
        blocked: { startMs: fromMs, endMs: toMs },
      });
    }
  return report;
}

function instant(ms: number): number | null {
  return ms === STANDS ? null : ms;
}
