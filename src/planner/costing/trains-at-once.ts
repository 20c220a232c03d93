import type { Plan } from "../compile-plan.ts";
import { firstDeparture, lastArrival } from "../motion/motions.ts";
import { createStepEvents, putStep } from "../steps/step-events.ts";
import { sweepSteps } from "../steps/sweep-steps.ts";

/** The most trains that are between their first departure and their last arrival at one instant. */
export function trainsAtOnce({ problem, motions }: Plan): number {
  const events = createStepEvents(2 * motions.timed.length);
  for (let train = 0; train < motions.timed.length; train++) {
    if (motions.timed[train] === 0) continue;
    putStep(events, 0, firstDeparture(motions, train), 1, train);
    putStep(events, 0, lastArrival(motions, train), -1, train);
  }
  return sweepSteps(events, new Int32Array(1), new Int32Array(1), problem.slot.startMs).groupPeak[0] ?? 0;
}
