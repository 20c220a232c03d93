import type { Comparison } from "../../../shared/estimates.ts";
import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { Reading } from "../../../shared/readings.ts";
import type { Replaced } from "../../planner/measured/as-run.ts";
import { currentsRead } from "../../planner/measured/currents-read.ts";
import { type Draw, type Fit, fitDraws, type SolveNonNegative } from "../../planner/measured/fit-draws.ts";
import { createWhoDraws, type Drawing } from "../../planner/measured/who-draws.ts";
import type { Problem } from "../../planner/problem.ts";

export interface Compared {
  readonly problem: Problem;
  /** What took the place of failed locomotives that night. */
  readonly replaced: readonly Replaced[];
  /** Of the club; those of districts in the slot at hand are looked at. */
  readonly readings: readonly Reading[];
  readonly session: string;
  readonly slot: string;
  readonly versions: ReadonlyMap<string, number>;
  /** A layout time, in seconds, as ms since the session's start, and back in words. */
  readonly toMs: (layoutSeconds: number) => number;
  readonly toLayout: (ms: number) => string;
  readonly solve: SolveNonNegative;
}

/**
 * Readings of districts beside what the plan says of the same moments, with the locomotives that really ran, and the
 * corrections that follow. What was read of a
 * locomotive by itself is taken as known; so is what rakes draw.
 */
export function compareReadings(given: Compared): Comparison {
  const { problem, replaced, session, slot } = given;
  const whoDraws = createWhoDraws(problem, replaced);
  const { startMs, endMs } = problem.slot;
  const all = given.readings
    .filter((reading) => reading.session === session && reading.slot === slot)
    .map((reading) => {
      const atMs = given.toMs(parseLayoutTime(reading.layoutTime ?? "0:00"));
      const district = problem.districts.findIndex(({ code }) => code === reading.district);
      return { reading, atMs, draws: whoDraws(district, atMs) };
    })
    .sort((a, b) => a.atMs - b.atMs || (a.reading.code < b.reading.code ? -1 : 1));
  // of any other time the plan says nothing
  const moments = all.filter(({ atMs }) => startMs <= atMs && atMs < endMs);
  const isKnown = knownDraws(given);
  const fit = fitDraws(
    moments.map(({ reading, draws }) => ({
      ma: reading.ma,
      otherMa: sumOf(draws.filter(isKnown)),
      draws: draws.filter((draw) => !isKnown(draw)),
    })),
    given.solve,
  );
  const codeOf = (draw: Draw | Drawing) => problem.locomotives[draw.locomotive]?.code ?? "?";
  const toCorrections = (corrections: Fit["corrections"]): Comparison["corrections"] =>
    corrections
      .filter(({ ma, newMa }) => ma !== newMa)
      .map((correction) => ({
        locomotive: codeOf(correction),
        state: correction.state,
        oldMa: correction.ma,
        newMa: correction.newMa,
        readings: correction.readings,
        version: given.versions.get(codeOf(correction)) ?? 0,
      }));
  return {
    headline: `${toHeadline(moments.length, fit)}${tellOthers(all.length - moments.length)}`,
    readings: moments.map(({ reading, atMs, draws }, i) => ({
      reading: reading.code,
      district: reading.district ?? "?",
      atLayout: given.toLayout(atMs),
      readMa: reading.ma,
      plannedMa: sumOf(draws),
      differenceMa: reading.ma - sumOf(draws),
      correctedMa: Math.round(fit.differencesMa[i] ?? 0),
      draws: draws.map(({ locomotive, rake, state, ma }) => ({
        locomotive: problem.locomotives[locomotive]?.code ?? null,
        rake: problem.rakes[rake]?.code ?? null,
        state,
        ma,
      })),
    })),
    corrections: toCorrections(fit.corrections),
    withheld: toCorrections(fit.withheld),
    leftAlone: fit.leftAlone.map((draw) => ({ locomotive: codeOf(draw), state: draw.state, ma: draw.ma })),
    beforeMa: Math.round(fit.beforeMa),
    afterMa: Math.round(fit.afterMa),
  };
}

function knownDraws({ problem, readings }: Compared): (draw: Drawing) => boolean {
  const read = currentsRead(readings);
  return ({ locomotive, state }) =>
    locomotive < 0 || read(problem.locomotives[locomotive]?.code ?? "", state).length > 0;
}

const sumOf = (draws: readonly Drawing[]) => draws.reduce((sum, { ma }) => sum + ma, 0);

function tellOthers(count: number): string {
  if (count === 0) return "";
  const readings = count === 1 ? "One reading is" : `${count} readings are`;
  return ` ${readings} of a time outside the slot and left out: put the layout time right.`;
}

function toHeadline(count: number, { beforeMa, afterMa, corrections, withheld }: Fit): string {
  if (count === 0) return "No district was read in this slot yet, so there is nothing to compare.";
  const readings = count === 1 ? "One reading is" : `${count} readings are`;
  const off = `${readings} off the plan by ${Math.round(beforeMa)} mA`;
  const changed = corrections.filter(({ ma, newMa }) => ma !== newMa).length;
  if (changed === 0 && withheld.length > 0)
    return `${off}; what they say of one locomotive would take them no nearer while others stay as they are.`;
  if (changed === 0) return `${off}; no locomotive's figure follows from that.`;
  const figures = changed === 1 ? "one figure corrected" : `${changed} figures corrected`;
  return `${off}; with ${figures} they would be by ${Math.round(afterMa)} mA.`;
}
