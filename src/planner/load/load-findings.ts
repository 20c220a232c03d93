import { createFinding, type Finding } from "../findings.ts";
import type { District, Problem, Supply } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import { timeAbove } from "../steps/step-curve.ts";
import { reserveLine } from "./limits.ts";
import { type LoadSweep, reportDistrict, reportSupply } from "./load-sweep.ts";

/**
 * Districts and supplies whose peak is above their limit, or else above the reserve's line. Cost: one look at each,
 * and for those found a pass over the events of its supply.
 */
export function loadFindings(problem: Problem, loads: LoadSweep): Finding[] {
  const { reserve } = problem.policy;
  const { keyPeak, groupPeak } = loads.steps;
  const { endMs } = loads.span;
  const findings: Finding[] = [];
  for (let i = 0; i < keyPeak.length; i++) {
    const { breakerMa } = problem.districts[i] as District;
    if ((keyPeak[i] as number) <= reserveLine(breakerMa, reserve)) continue;
    const report = reportDistrict(problem, loads, i);
    findings.push(loadFinding(report, endMs, "district-will-trip", "district-too-close", { districts: [i] }));
  }
  for (let i = 0; i < groupPeak.length; i++) {
    const { ratingMa } = problem.supplies[i] as Supply;
    if ((groupPeak[i] as number) <= reserveLine(ratingMa, reserve)) continue;
    const report = reportSupply(problem, loads, i);
    findings.push(loadFinding(report, endMs, "supply-over-rating", "supply-too-close", { supplies: [i] }));
  }
  return findings;
}

/**
 * A load above its limit stops the session; one only above the reserve's line warns. Before: its peak is above the
 * line. The span runs from the first to the last instant above the limit concerned; `atMs` is the peak's.
 */
export function loadFinding(
  report: LoadReport,
  endMs: number,
  over: Finding["code"],
  close: Finding["code"],
  named: Partial<Finding>,
): Finding {
  const isOver = report.peakMa > report.limitMa;
  const limit = isOver ? report.limitMa : report.reserveMa;
  const above = timeAbove(report.curve, limit, endMs);
  if (above === null) throw new Error("a load finding needs a load above its limit");
  return createFinding({
    code: isOver ? over : close,
    severity: isOver ? "stops" : "warns",
    span: above.span,
    trains: report.shares.map((share) => share.train).sort((a, b) => a - b),
    measured: report.peakMa,
    limit,
    unit: "mA",
    atMs: report.peakAtMs,
    overMs: above.totalMs,
    shares: report.shares,
    ...named,
  });
}
