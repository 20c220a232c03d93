import type { CheckReport, FindingReport, NeedReport } from "../../../shared/check.ts";

/** Something counted that a train needs one of: the handsets of one command system, or the controller outputs. */
export interface Need {
  /** Fit for an element's id. */
  readonly id: string;
  readonly title: string;
  readonly unit: "handsets" | "outputs";
  readonly report: NeedReport;
}

/** Every need of the plan that has a stock or a taker. */
export function needsOf({ handsets, outputNeed }: CheckReport): Need[] {
  const needs: Need[] = handsets.map((report) => ({
    id: `handsets-${report.code}`,
    title: `Handsets of ${report.name}`,
    unit: "handsets",
    report,
  }));
  needs.push({ id: "outputs", title: "Controller outputs", unit: "outputs", report: outputNeed });
  return needs.filter(({ report }) => report.stock > 0 || report.peak > 0);
}

/** Whether the finding is about this need. */
export function lacks(finding: FindingReport, need: Need): boolean {
  return need.unit === "outputs"
    ? finding.unit === "outputs"
    : finding.commandSystems.includes(need.report.code);
}
