import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Occupations } from "./occupations.ts";
import type { Clashes } from "./sweep-clashes.ts";

/** Two trains on one section: `low` and `high` by index. */
interface Meeting {
  readonly low: number;
  readonly high: number;
  readonly section: number;
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * One finding for each pair of trains and each chain of clashes that overlap or touch in time, whatever their
 * sections: a head-on meeting over three sections is one. Cost: sorting the clashes.
 */
export function clashFindings(motions: Motions, occupations: Occupations, clashes: Clashes): Finding[] {
  const meetings = clashes.first.map((a, i) =>
    toMeeting(motions, occupations, a, clashes.second[i] as number),
  );
  meetings.sort(
    (a, b) =>
      a.low - b.low || a.high - b.high || a.startMs - b.startMs || a.endMs - b.endMs || a.section - b.section,
  );
  const findings: Finding[] = [];
  for (let i = 0; i < meetings.length; ) {
    const { low, high, startMs, endMs } = meetings[i] as Meeting;
    let untilMs = endMs;
    const sections = new Set<number>();
    for (; i < meetings.length; i++) {
      const next = meetings[i] as Meeting;
      if (next.low !== low || next.high !== high || next.startMs > untilMs) break;
      untilMs = Math.max(untilMs, next.endMs);
      sections.add(next.section);
    }
    findings.push(toFinding([low, high], sections, startMs, untilMs));
  }
  return findings;
}

function toMeeting(motions: Motions, occupations: Occupations, a: number, b: number): Meeting {
  const { trainOfRow, fromMs, toMs } = occupations;
  const trainA = trainOfRow[a] as number;
  const trainB = trainOfRow[b] as number;
  return {
    low: Math.min(trainA, trainB),
    high: Math.max(trainA, trainB),
    section: motions.section[a] as number,
    startMs: Math.max(fromMs[a] as number, fromMs[b] as number),
    endMs: Math.min(toMs[a] as number, toMs[b] as number),
  };
}

function toFinding(trains: number[], sections: Set<number>, startMs: number, endMs: number): Finding {
  return createFinding({
    code: "section-clash",
    severity: "stops",
    span: { startMs, endMs },
    trains,
    sections: [...sections].sort((a, b) => a - b),
    measured: 2,
    limit: 1,
    unit: "trains",
  });
}
