import type { Interval, Problem } from "../problem.ts";
import type { NeedReport } from "../result.ts";
import { sharesAt, stepCurve, timeAbove } from "../steps/step-curve.ts";
import { addStep, createStepEvents } from "../steps/step-events.ts";
import { sweepSteps } from "../steps/sweep-steps.ts";
import type { OpenRun } from "./build-runs.ts";

/**
 * How many outputs are needed at once, whichever they are, against all the club has: trains in a run, each once. It
 * may begin before the slot and end after it. Cost: sorting the runs.
 */
export function reportOutputNeed(problem: Problem, runs: readonly OpenRun[]): NeedReport {
  const events = createStepEvents(2 * runs.length);
  let startMs = problem.slot.startMs;
  let endMs = problem.slot.endMs;
  for (const { train, span } of mergeOfTrain(runs)) {
    addStep(events, 0, span.startMs, 1, train);
    addStep(events, 0, span.endMs, -1, train);
    startMs = Math.min(startMs, span.startMs);
    endMs = Math.max(endMs, span.endMs);
  }
  const sweep = sweepSteps(events, new Int32Array(1), new Int32Array(1), problem.slot.startMs);
  const of = { sweep, group: 0, key: null, constant: 0 };
  const curve = stepCurve(of, { startMs, endMs: endMs + 1 });
  const stock = problem.outputs.length;
  const peakAtMs = sweep.groupPeakAtMs[0] as number;
  return {
    stock,
    peak: sweep.groupPeak[0] as number,
    peakAtMs,
    trains: sharesAt(of, peakAtMs)
      .map(({ train }) => train)
      .sort((a, b) => a - b),
    overMs: timeAbove(curve, stock, endMs)?.totalMs ?? 0,
    curve,
  };
}

/** Overlapping runs of one train put together: it needs one output for both. */
function mergeOfTrain(runs: readonly OpenRun[]): { train: number; span: Interval }[] {
  const latest = new Map<number, { train: number; span: Interval }>();
  const merged: { train: number; span: Interval }[] = [];
  for (const { train, span } of runs) {
    const before = latest.get(train);
    if (before && span.startMs < before.span.endMs)
      before.span = { startMs: before.span.startMs, endMs: Math.max(before.span.endMs, span.endMs) };
    else {
      const entry = { train, span };
      latest.set(train, entry);
      merged.push(entry);
    }
  }
  return merged;
}
