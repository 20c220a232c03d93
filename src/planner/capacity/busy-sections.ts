import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import { occupancyRate } from "../occupation/headway.ts";
import type { Problem } from "../problem.ts";
import type { BusySection } from "../result.ts";
import { type OnTheWay, onTheWay } from "./on-the-way.ts";

/** How long each section is taken by trains on their way, ms, and how often one is in it; by section. */
export interface BusyTimes {
  readonly ms: Float64Array;
  readonly trains: Int32Array;
}

/**
 * The compressed occupation of every section: its trains in the order of the timetable, pushed together until their
 * blocking times touch (UIC Code 406; for one section that is their sum). A train takes a section once at a time, even where
 * its path names the section twice in a row, as where it turns round. Cost: linear in path entries.
 */
export function busyTimes(problem: Problem, motions: Motions): BusyTimes {
  return sumUp(onTheWay(problem, motions), problem.sections.length);
}

/** Along a path both ends of what is taken only grow: so the visit before is all that one can overlap with. */
function sumUp({ count, section, train, fromMs, toMs }: OnTheWay, sections: number): BusyTimes {
  const busy: BusyTimes = { ms: new Float64Array(sections), trains: new Int32Array(sections) };
  const before = new Int32Array(sections).fill(-1);
  for (let i = 0; i < count; i++) {
    const at = section[i] as number;
    const other = before[at] as number;
    before[at] = i;
    const goesOn =
      other >= 0 && train[other] === train[i] && (fromMs[i] as number) <= (toMs[other] as number);
    const from = (goesOn ? toMs[other] : fromMs[i]) as number;
    busy.ms[at] = (busy.ms[at] as number) + (toMs[i] as number) - from;
    if (!goesOn) busy.trains[at] = (busy.trains[at] as number) + 1;
  }
  return busy;
}

/**
 * Share of the slot for which each section that trains use is taken, and what could still be added to it: 1 / share − 1,
 * UIC Code 406 (2013), additional time rate. In the order of the sections.
 */
export function reportBusy({ slot }: Problem, busy: BusyTimes): BusySection[] {
  const windowMs = slot.endMs - slot.startMs;
  return Array.from(busy.ms, (ms, section) => ({
    section,
    trains: busy.trains[section] as number,
    busyMs: ms,
    share: occupancyRate(ms, 0, windowMs),
    additional: ms > 0 ? windowMs / ms - 1 : null,
  })).filter(({ trains }) => trains > 0);
}

/** One-train sections that are taken for more of the slot than the policy allows. */
export function busyFindings(problem: Problem, busy: BusyTimes, exclusive: Uint8Array): Finding[] {
  const { policy, slot } = problem;
  return reportBusy(problem, busy)
    .filter(({ section, share }) => exclusive[section] === 1 && share > policy.busyShare)
    .map(({ section, share }) =>
      createFinding({
        code: "section-too-busy",
        severity: "warns",
        span: slot,
        sections: [section],
        // to the thousandth: what people compare
        measured: Math.round(share * 1_000) / 1_000,
        limit: policy.busyShare,
        unit: "share",
      }),
    );
}
