import { createFinding, type Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import { occupancyRate } from "../occupation/headway.ts";
import type { Problem } from "../problem.ts";
import type { BusySection } from "../result.ts";
import { type OnTheWay, onTheWay } from "./on-the-way.ts";

/** How long each section is taken by trains on their way, and by how many: ms, by section. */
export interface BusyTimes {
  readonly ms: Float64Array;
  readonly trains: Int32Array;
}

/**
 * The compressed occupation of every section: its trains in the order of the timetable, pushed together until their
 * blocking times touch (UIC Code 406; for one section that is their sum). Cost: linear in path entries.
 */
export function busyTimes(problem: Problem, motions: Motions): BusyTimes {
  return sumUp(onTheWay(problem, motions), problem.sections.length);
}

function sumUp({ count, section, fromMs, toMs }: OnTheWay, sections: number): BusyTimes {
  const busy: BusyTimes = { ms: new Float64Array(sections), trains: new Int32Array(sections) };
  for (let i = 0; i < count; i++) {
    const at = section[i] as number;
    busy.ms[at] = (busy.ms[at] as number) + (toMs[i] as number) - (fromMs[i] as number);
    busy.trains[at] = (busy.trains[at] as number) + 1;
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
