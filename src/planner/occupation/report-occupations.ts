import { type Motions, STANDS } from "../motion/motions.ts";
import type { Occupation } from "../result.ts";
import type { Occupations } from "./occupations.ts";

/** The blocking times for people to look at: by section, then start. Trains that are not timed have none. */
export function reportOccupations(motions: Motions, occupations: Occupations): Occupation[] {
  const { pathRow, fromMs, toMs } = occupations;
  const report: Occupation[] = [];
  for (let i = 0; i < pathRow.length; i++) {
    const row = pathRow[i] as number;
    const train = motions.trainOfRow[row] as number;
    report.push({
      section: motions.section[row] as number,
      train,
      pathEntry: row - (motions.firstRow[train] as number),
      enterMs: instant(motions.enterMs[row] as number),
      clearMs: instant(motions.clearMs[row] as number),
      blocked: { startMs: fromMs[i] as number, endMs: toMs[i] as number },
    });
  }
  return report;
}

function instant(ms: number): number | null {
  return ms === STANDS ? null : ms;
}
