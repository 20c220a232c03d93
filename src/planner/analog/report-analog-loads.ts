import type { Finding } from "../findings.ts";
import { loadFinding } from "../load/load-findings.ts";
import { reportLoad } from "../load/load-report.ts";
import type { Interval, Problem } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import type { StepEvents } from "../steps/step-events.ts";
import { sweepSteps } from "../steps/sweep-steps.ts";

/**
 * Loads of every output and of every controller's transformer, in the order of the problem, and what is wrong
 * with them.
 */
export interface AnalogLoads {
  readonly outputs: LoadReport[];
  readonly controllers: LoadReport[];
  readonly findings: Finding[];
}

/**
 * Sums the load of each output and, with the accessories fed from it, of each controller; a finding for each
 * that is above its limit or eats into its reserve. Over `covered` or, if later, until the last change. Before: no
 * event earlier than `covered`. Cost: sorting the events, then linear for each output and controller.
 */
export function reportAnalogLoads(problem: Problem, events: StepEvents, covered: Interval): AnalogLoads {
  const { reserve } = problem.policy;
  let { endMs } = covered;
  for (let i = 0; i < events.count; i++) endMs = Math.max(endMs, events.ms[i] as number);
  const span = { startMs: covered.startMs, endMs };
  const controllerOf = Int32Array.from(problem.outputs, ({ controller }) => controller);
  const accessories = Int32Array.from(problem.controllers, ({ accessoryMa }) => accessoryMa);
  const sweep = sweepSteps(events, controllerOf, accessories, span.startMs);
  const outputs = problem.outputs.map(({ controller, ratingMa }, key) => {
    const peak = { ma: sweep.keyPeak[key] as number, atMs: sweep.keyPeakAtMs[key] as number };
    return reportLoad({ sweep, group: controller, key, constant: 0 }, peak, ratingMa, reserve, span);
  });
  const controllers = problem.controllers.map(({ transformerMa, accessoryMa }, group) => {
    const peak = { ma: sweep.groupPeak[group] as number, atMs: sweep.groupPeakAtMs[group] as number };
    return reportLoad({ sweep, group, key: null, constant: accessoryMa }, peak, transformerMa, reserve, span);
  });
  const findings = [
    ...tooHigh(outputs, endMs, "output-over-rating", "output-too-close", (output) => ({ outputs: [output] })),
    ...tooHigh(controllers, endMs, "controller-over-rating", "controller-too-close", (controller) => ({
      controllers: [controller],
    })),
  ];
  return { outputs, controllers, findings };
}

function tooHigh(
  reports: readonly LoadReport[],
  endMs: number,
  over: Finding["code"],
  close: Finding["code"],
  named: (index: number) => Partial<Finding>,
): Finding[] {
  return reports.flatMap((report, index) =>
    report.peakMa > report.reserveMa ? [loadFinding(report, endMs, over, close, named(index))] : [],
  );
}
