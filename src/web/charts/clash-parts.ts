import type { CheckReport, FindingReport } from "../../../shared/check.ts";
import { common } from "./lanes.ts";

/** The part of a section's row where a finding says that trains are in each other's way. */
export interface ClashPart {
  readonly section: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly finding: FindingReport;
}

type Occupation = CheckReport["occupations"][number];

const blocked = (o: Occupation) => ({ fromMs: o.blockedFromMs, toMs: o.blockedToMs });

/** Overlaps of two different trains of the finding in one of its sections. */
function overlaps(finding: FindingReport, occupations: readonly Occupation[]): ClashPart[] {
  const trains = new Set(finding.trains);
  const parts: ClashPart[] = [];
  for (const section of finding.sections) {
    const inSection = occupations.filter((o) => o.section === section && trains.has(o.train));
    inSection.forEach((a, i) => {
      for (const b of inSection.slice(i + 1)) {
        const part = a.train === b.train ? null : common(blocked(a), blocked(b));
        if (part) parts.push({ section, ...part, finding });
      }
    });
  }
  return parts;
}

/**
 * Where to hatch the occupation bars: for a clash the time both trains hold the section, for a shared section that is
 * too full the whole span of the finding. Other findings hatch nothing.
 */
export function clashParts(report: Pick<CheckReport, "findings" | "occupations">): ClashPart[] {
  return report.findings.flatMap((finding) => {
    if (finding.code === "section-clash") return overlaps(finding, report.occupations);
    if (finding.code !== "shared-section-too-full") return [];
    const { startMs: fromMs, endMs: toMs } = finding.span;
    return finding.sections.map((section) => ({ section, fromMs, toMs, finding }));
  });
}
