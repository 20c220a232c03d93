import type { FindingReport } from "../../../shared/check.ts";

/** A finding with a name that stays the same when others come and go, fit for an address. */
export interface KeyedFinding {
  readonly key: string;
  readonly finding: FindingReport;
}

/** What a finding is about, the most telling kinds first. */
function subjects(finding: FindingReport): readonly string[] {
  return [
    ...finding.districts,
    ...finding.supplies,
    ...finding.controllers,
    ...finding.outputs,
    ...finding.commandSystems,
    ...finding.sections,
    ...finding.trains,
    ...finding.locomotives,
    ...finding.rakes,
  ];
}

/** Subjects beyond these say nothing new: the key has to be readable in an address. */
const MOST_SUBJECTS = 4;

/** Gives every finding its key; two that would share one are told apart by their moment, then by their order. */
export function keyFindings(findings: readonly FindingReport[]): KeyedFinding[] {
  const used = new Set<string>();
  return findings.map((finding) => {
    const plain = [finding.code, ...subjects(finding).slice(0, MOST_SUBJECTS)].join("~");
    let key = plain;
    for (let n = 1; used.has(key); n++) key = `${plain}~${finding.atMs}${n > 1 ? `~${n}` : ""}`;
    used.add(key);
    return { key, finding };
  });
}
