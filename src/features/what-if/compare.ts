import type { CheckReport, FindingReport } from "../../../shared/check.ts";

export interface Comparison {
  /** Findings that only the second has, in its order. */
  readonly appears: FindingReport[];
  /** Findings that only the first has. */
  readonly clears: FindingReport[];
}

/**
 * What two checks of one slot differ in. A finding is the same where it says the same of the same things, whatever its
 * figure and its moment. Cost: linear.
 */
export function compareReports(before: CheckReport, after: CheckReport): Comparison {
  const [had, has] = [new Set(before.findings.map(keyOf)), new Set(after.findings.map(keyOf))];
  return {
    appears: after.findings.filter((finding) => !had.has(keyOf(finding))),
    clears: before.findings.filter((finding) => !has.has(keyOf(finding))),
  };
}

/** What may trip is one finding whoever makes up its peak; the rest is told apart by its trains too. */
function keyOf(finding: FindingReport): string {
  const { code, sections, districts, supplies, outputs, controllers, commandSystems } = finding;
  const things = [districts, supplies, outputs, controllers, commandSystems];
  const of = things.some((list) => list.length > 0)
    ? things
    : [sections, finding.trains, finding.locomotives, finding.rakes, finding.members, finding.handsets];
  return JSON.stringify([code, of]);
}
