import { createFinding, type Finding } from "../findings.ts";
import { firstDeparture, lastArrival, type Motions, STANDS } from "../motion/motions.ts";
import { occupancyRate } from "../occupation/headway.ts";
import type { Problem } from "../problem.ts";
import type { BusySection } from "../result.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;

/** How long each section is taken by trains on their way, and by how many: ms, by section. */
export interface BusyTimes {
  readonly ms: Float64Array;
  readonly trains: Int32Array;
}

/**
 * The compressed occupation of every section: its trains in the order of the timetable, pushed together until their
 * blocking times touch (UIC Code 406; for one section that is their sum). Stands before a first departure and after a last
 * arrival are parking and count only with set-up and release. Cost: linear in path entries.
 */
export function busyTimes({ policy, sections }: Problem, motions: Motions): BusyTimes {
  const busy: BusyTimes = {
    ms: new Float64Array(sections.length),
    trains: new Int32Array(sections.length),
  };
  for (let train = 0; train < motions.timed.length; train++) {
    if (motions.timed[train] === 0) continue;
    const departs = firstDeparture(motions, train);
    const arrives = lastArrival(motions, train);
    const end = motions.firstRow[train + 1] as number;
    for (let row = motions.firstRow[train] as number; row < end; row++) {
      const section = motions.section[row] as number;
      const enter = motions.enterMs[row] as number;
      const clear = motions.clearMs[row] as number;
      const fromMs = (enter === NEVER ? departs : enter) - policy.setUpMs;
      const toMs = (clear === NEVER ? arrives : clear) + policy.releaseMs;
      busy.ms[section] = (busy.ms[section] as number) + toMs - fromMs;
      busy.trains[section] = (busy.trains[section] as number) + 1;
    }
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
