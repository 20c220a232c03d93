import { createFinding, type Finding } from "../findings.ts";
import type { Problem } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import { timeAbove } from "../steps/step-curve.ts";
import { type HighLoads, reportDistrict, reportSupply } from "./load-sweep.ts";

/**
 * Districts and supplies whose peak is above their limit, or else above the reserve's line. Cost: for each a pass over
 * the events of its supply.
 */
export function loadFindings(problem: Problem, high: HighLoads): Finding[] {
  const { endMs } = high.span;
  return [
    ...high.districts.map((district) =>
      loadFinding(
        reportDistrict(problem, high, district),
        endMs,
        "district-will-trip",
        "district-too-close",
        {
          districts: [district],
        },
      ),
    ),
    ...high.supplies.map((supply) =>
      loadFinding(reportSupply(problem, high, supply), endMs, "supply-over-rating", "supply-too-close", {
        supplies: [supply],
      }),
    ),
  ];
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
