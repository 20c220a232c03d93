import { callsOf, type Motions } from "../motion/motions.ts";
import type { Problem } from "../problem.ts";
import { addStep, createStepEvents, type StepEvents } from "../steps/step-events.ts";
import { enginesMa, lightingMa } from "./analog-draw.ts";
import type { OpenRun } from "./build-runs.ts";

/**
 * What the trains draw from their outputs, as changes of each output's load: locomotives their running current
 * while they move and nothing while they stand, lit rakes while their train is in a section that is switched to its
 * output (a driver may have the output before and after). Runs without an output draw nothing. Keys of the events are outputs; nothing before the slot's start. Cost: linear in runs and
 * calls.
 */
export function analogLoad(
  problem: Problem,
  motions: Motions,
  runs: readonly OpenRun[],
  outputs: readonly number[],
): StepEvents {
  const events = createStepEvents(8 * runs.length);
  const add = (output: number, train: number, ma: number, fromMs: number, toMs: number) => {
    const from = Math.max(fromMs, problem.slot.startMs);
    if (ma === 0 || toMs <= from) return;
    addStep(events, output, from, ma, train);
    addStep(events, output, toMs, -ma, train);
  };
  for (const [index, { train, litSpans, departMs, arriveMs }] of runs.entries()) {
    const output = outputs[index] as number;
    if (output < 0) continue;
    for (const { startMs, endMs } of litSpans) add(output, train, lightingMa(problem, train), startMs, endMs);
    const ma = enginesMa(problem, train);
    let leftMs: number | null = null;
    for (const call of callsOf(motions, train)) {
      if (leftMs !== null)
        add(output, train, ma, Math.max(leftMs, departMs), Math.min(call.arriveMs, arriveMs));
      leftMs = call.departMs;
    }
  }
  return events;
}
