import { createFinding, type Finding } from "../findings.ts";
import type { District, Problem } from "../problem.ts";
import type { LoadScene } from "./digital-load.ts";
import { reportRestart, reportStall } from "./surge-reports.ts";
import type { SurgeSweep } from "./surges.ts";

/**
 * Districts whose breaker would open when one locomotive stalls, and those that would not come up again after a trip.
 * One that its plain load trips already is told of by that alone. Cost: one look at each, and for those found a pass over
 * their events.
 */
export function surgeFindings(
  scene: LoadScene,
  sweep: SurgeSweep,
  trips: (district: number) => boolean,
): Finding[] {
  const { problem } = scene;
  const findings: Finding[] = [];
  for (let district = 0; district < problem.districts.length; district++) {
    const { breakerMa } = problem.districts[district] as District;
    if ((sweep.surges.stallMa[district] as number) > breakerMa && !trips(district))
      findings.push(...stallFinding(scene, sweep, district, breakerMa));
    if ((sweep.surges.inrushMa[district] as number) > breakerMa && !isBrief(problem, district))
      findings.push(...restartFinding(scene, sweep, district, breakerMa));
  }
  return findings;
}

const isBrief = ({ policy, districts }: Problem, district: number) =>
  policy.inrushMs <= (districts[district] as District).tripDelayMs;

function stallFinding(scene: LoadScene, sweep: SurgeSweep, district: number, breakerMa: number): Finding[] {
  const stall = reportStall(scene, sweep, district);
  if (stall === null) return [];
  return [
    createFinding({
      code: "district-trips-on-stall",
      severity: "warns",
      span: { startMs: stall.atMs, endMs: stall.atMs + 1 },
      districts: [district],
      locomotives: [stall.locomotive],
      trains: [stall.train],
      measured: stall.ma,
      limit: breakerMa,
      unit: "mA",
    }),
  ];
}

function restartFinding(scene: LoadScene, sweep: SurgeSweep, district: number, breakerMa: number): Finding[] {
  const restart = reportRestart(scene, sweep, district);
  if (restart === null || restart.holds) return [];
  return [
    createFinding({
      code: "district-trips-on-restart",
      needed: restart.groups?.length ?? null,
      severity: "warns",
      span: { startMs: restart.atMs, endMs: restart.atMs + 1 },
      districts: [district],
      trains: restart.trains,
      measured: restart.inrushMa,
      limit: breakerMa,
      unit: "mA",
    }),
  ];
}
