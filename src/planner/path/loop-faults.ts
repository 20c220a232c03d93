import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Section } from "../problem.ts";
import { passing } from "./train-instants.ts";

/**
 * Trains longer than a return loop on their path: design section 6, a loop holds the whole train, for its polarity is
 * turned over under it. Sections so marked that follow each other on a path are one loop; one met twice in a row, where
 * the train reverses, counts once. Cost: linear in path entries.
 */
export function loopFaults(plan: Plan): Finding[] {
  const { problem, motions } = plan;
  if (!problem.sections.some(({ returnLoop }) => returnLoop)) return [];
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    const first = motions.firstRow[train] as number;
    const end = motions.firstRow[train + 1] as number;
    const lengthMm = motions.lengthMm[train] as number;
    for (let row = first; row < end; ) {
      const loop = new Set<number>();
      const begins = row;
      for (; row < end && isLoop(plan, row); row++) loop.add(motions.section[row] as number);
      if (row === begins) {
        row++;
        continue;
      }
      const sections = [...loop];
      const holdsMm = sections.reduce((mm, at) => mm + (problem.sections[at] as Section).lengthMm, 0);
      if (lengthMm <= holdsMm) continue;
      findings.push(
        createFinding({
          code: "return-loop-too-short",
          severity: "stops",
          span: passing(plan, train, begins - first),
          trains: [train],
          sections,
          measured: lengthMm,
          limit: holdsMm,
          unit: "mm",
          pathEntry: begins - first,
        }),
      );
    }
  }
  return findings;
}

const isLoop = ({ problem, motions }: Plan, row: number) =>
  (problem.sections[motions.section[row] as number] as Section).returnLoop;
