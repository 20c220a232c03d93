import type { Problem } from "../problem.ts";
import type { NeedReport } from "../result.ts";
import { type StepFunction, sharesAt, stepCurve, timeAbove } from "../steps/step-curve.ts";
import type { StepEvents } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";

/** One step function a command system: both key and group of the sweep. */
export function sweepNeed(problem: Problem, events: StepEvents): StepSweep {
  const systems = problem.commandSystems.length;
  const itself = new Int32Array(systems);
  for (let system = 0; system < systems; system++) itself[system] = system;
  return sweepSteps(events, itself, new Int32Array(systems), problem.slot.startMs);
}

/** Need of one system over the whole session: it may begin before the slot and end after it. */
export function reportNeed(sweep: StepSweep, system: number, stock: number): NeedReport {
  const of: StepFunction = { sweep, group: system, key: null, constant: 0 };
  const peakAtMs = sweep.groupPeakAtMs[system] as number;
  const curve = stepCurve(of, { startMs: firstMs(sweep, system), endMs: Number.MAX_SAFE_INTEGER });
  const shares = sharesAt(of, peakAtMs);
  return {
    stock,
    peak: sweep.groupPeak[system] as number,
    peakAtMs,
    trains: shares.map((share) => share.train).sort((a, b) => a - b),
    // the last step is back at 0, so no end is needed
    overMs: timeAbove(curve, stock, 0)?.totalMs ?? 0,
    curve,
  };
}

function firstMs({ sorted, groupPeakAtMs }: StepSweep, system: number): number {
  const first = sorted.start[system] as number;
  const none = first === sorted.start[system + 1];
  return none ? (groupPeakAtMs[system] as number) : (sorted.time[first] as number);
}
