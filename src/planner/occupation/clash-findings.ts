import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import { blockingTime, type Clashes, type Occupations } from "./occupations.ts";

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
  const meetings: Meeting[] = [];
  for (let i = 0; i < clashes.first.length; i++)
    meetings.push(toMeeting(motions, occupations, clashes.first[i] as number, clashes.second[i] as number));
  meetings.sort(compareMeetings);
  const findings: Finding[] = [];
  for (let i = 0; i < meetings.length; ) {
    const { low, high, startMs, endMs } = meetings[i] as Meeting;
    let untilMs = endMs;
    const sections: number[] = [];
    for (; i < meetings.length; i++) {
      const next = meetings[i] as Meeting;
      if (next.low !== low || next.high !== high || next.startMs > untilMs) break;
      untilMs = Math.max(untilMs, next.endMs);
      if (!sections.includes(next.section)) sections.push(next.section);
    }
    findings.push(toFinding([low, high], sections, startMs, untilMs));
  }
  return findings;
}

function compareMeetings(a: Meeting, b: Meeting): number {
  return (
    a.low - b.low || a.high - b.high || a.startMs - b.startMs || a.endMs - b.endMs || a.section - b.section
  );
}

function toMeeting(motions: Motions, occupations: Occupations, first: number, second: number): Meeting {
  const a = blockingTime(occupations, first);
  const b = blockingTime(occupations, second);
  const trainA = motions.trainOfRow[a.pathRow] as number;
  const trainB = motions.trainOfRow[b.pathRow] as number;
  return {
    low: Math.min(trainA, trainB),
    high: Math.max(trainA, trainB),
    section: motions.section[a.pathRow] as number,
    startMs: Math.max(a.fromMs, b.fromMs),
    endMs: Math.min(a.toMs, b.toMs),
  };
}

function toFinding(trains: number[], sections: number[], startMs: number, endMs: number): Finding {
  return createFinding({
    code: "section-clash",
    severity: "stops",
    span: { startMs, endMs },
    trains,
    sections: sections.sort((a, b) => a - b),
    measured: 2,
    limit: 1,
    unit: "trains",
  });
}
