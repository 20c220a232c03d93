import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Interval } from "../problem.ts";

/**
 * Stands, the first and the last included, in a section that a train must clear and that is shorter than the train.
 * A pass is not a stand. Cost: linear in calls.
 */
export function roadFaults(plan: Plan): Finding[] {
  const { problem, motions } = plan;
  const { mostMm } = plan.track;
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    if (motions.timed[train] === 0) continue;
    const lengthMm = motions.lengthMm[train] as number;
    const row = motions.firstRow[train] as number;
    const end = motions.firstCall[train + 1] as number;
    for (let call = motions.firstCall[train] as number; call < end; call++) {
      const entry = motions.callEntry[call] as number;
      const section = motions.section[row + entry] as number;
      if (lengthMm <= (mostMm[section] as number)) continue;
      const span = standing(plan, train, call);
      if (span === null) continue;
      findings.push(
        createFinding({
          code: "train-longer-than-road",
          severity: "stops",
          span,
          trains: [train],
          sections: [section],
          measured: lengthMm,
          limit: mostMm[section] as number,
          unit: "mm",
          pathEntry: entry,
        }),
      );
    }
  }
  return findings;
}

/** Null: a pass. At least 1 ms at both ends of the path. */
function standing({ motions, stock }: Plan, train: number, call: number): Interval | null {
  const arriveMs = motions.arriveMs[call] as number;
  const departMs = motions.departMs[call] as number;
  if (call === motions.firstCall[train])
    return { startMs: Math.min(stock.standFromMs[train] as number, departMs - 1), endMs: departMs };
  if (call + 1 === motions.firstCall[train + 1])
    return { startMs: arriveMs, endMs: Math.max(stock.standToMs[train] as number, arriveMs + 1) };
  return arriveMs < departMs ? { startMs: arriveMs, endMs: departMs } : null;
}
