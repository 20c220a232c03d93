import { createFinding, type Finding } from "../findings.ts";
import type { Problem } from "../problem.ts";
import { timeAbove } from "../steps/step-curve.ts";
import type { StepSweep } from "../steps/sweep-steps.ts";
import { reportNeed } from "./need-report.ts";

/**
 * Command systems with too few handsets. The proof: at `atMs`, `trains` all need one. The span runs from the first to
 * the last instant at which more are needed than there are.
 */
export function handsetFindings(problem: Problem, sweep: StepSweep): Finding[] {
  const findings: Finding[] = [];
  problem.commandSystems.forEach(({ handsets }, system) => {
    if ((sweep.groupPeak[system] as number) <= handsets) return;
    const report = reportNeed(sweep, system, handsets);
    const above = timeAbove(report.curve, handsets, 0);
    if (above === null) throw new Error("a need above the stock lasts some time");
    findings.push(
      createFinding({
        code: "handsets-too-few",
        severity: "stops",
        span: above.span,
        trains: report.trains,
        commandSystems: [system],
        measured: report.peak,
        limit: handsets,
        unit: "handsets",
        atMs: report.peakAtMs,
        overMs: above.totalMs,
      }),
    );
  });
  return findings;
}
