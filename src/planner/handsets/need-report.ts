import type { CommandSystem, Problem } from "../problem.ts";
import type { NeedReport } from "../result.ts";
import { hotRows } from "../steps/hot-rows.ts";
import { createRoughSteps, cutSlices, putRough } from "../steps/rough-steps.ts";
import { type StepFunction, sharesAt, stepCurve, timeAbove } from "../steps/step-curve.ts";
import { createStepEvents, putStep } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";
import type { Needs } from "./handset-need.ts";

/** One step function a command system: both key and group of the sweep. */
export function sweepNeeds(problem: Problem, needs: Needs): StepSweep {
  return sweepMarked(problem, needs, null);
}

/**
 * The same for systems of which too few are in stock at some time, and for the others a need that stays within the
 * stock: enough to find what is too few. Needs at times when there are enough are left out.
 */
export function sweepShortNeeds(problem: Problem, needs: Needs): StepSweep {
  return sweepMarked(problem, needs, needsWhenShort(problem, needs));
}

function sweepMarked(problem: Problem, needs: Needs, wanted: Uint8Array | null): StepSweep {
  const systems = problem.commandSystems.length;
  const events = createStepEvents(2 * needs.count);
  for (let i = 0; i < needs.count; i++) {
    if (wanted !== null && wanted[i] === 0) continue;
    const system = needs.system[i] as number;
    const train = needs.train[i] as number;
    putStep(events, system, needs.fromMs[i] as number, 1, train);
    putStep(events, system, needs.toMs[i] as number, -1, train);
  }
  return sweepSteps(events, eachItself(systems), new Int32Array(systems), problem.slot.startMs);
}

function needsWhenShort({ commandSystems, slot }: Problem, needs: Needs): Uint8Array {
  const systems = commandSystems.length;
  const rough = createRoughSteps(cutSlices(slot, systems, 2 * needs.count), needs.count);
  for (let i = 0; i < needs.count; i++)
    putRough(rough, needs.system[i] as number, needs.fromMs[i] as number, needs.toMs[i] as number, 1);
  const lines = {
    groupOf: eachItself(systems),
    key: new Float64Array(systems),
    group: new Float64Array(systems),
  };
  for (let system = 0; system < systems; system++) {
    const { handsets } = commandSystems[system] as CommandSystem;
    lines.key[system] = handsets;
    lines.group[system] = handsets;
  }
  return hotRows(rough, lines);
}

function eachItself(count: number): Int32Array {
  const groups = new Int32Array(count);
  for (let i = 0; i < count; i++) groups[i] = i;
  return groups;
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
