import type { Interval, Problem } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import type { StepFunction } from "../steps/step-curve.ts";
import type { StepEvents } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";
import { reportLoad } from "./load-report.ts";

/** Loads of all districts and supplies. Keys of the sweep are districts, groups supplies. */
export interface LoadSweep {
  readonly steps: StepSweep;
  /** What the loads cover: from the slot's start to its end or, if later, the last event. */
  readonly span: Interval;
}

export function sweepLoads(problem: Problem, events: StepEvents, span: Interval): LoadSweep {
  const supplyOf = Int32Array.from(problem.districts, (district) => district.supply);
  const accessories = Int32Array.from(problem.supplies, (supply) => supply.accessoryMa);
  return { steps: sweepSteps(events, supplyOf, accessories, span.startMs), span };
}

export function districtFunction({ steps }: LoadSweep, district: number): StepFunction {
  return { sweep: steps, group: steps.groupOfKey[district] as number, key: district, constant: 0 };
}

export function supplyFunction(problem: Problem, { steps }: LoadSweep, supply: number): StepFunction {
  return { sweep: steps, group: supply, key: null, constant: problem.supplies[supply]?.accessoryMa ?? 0 };
}

export function reportDistrict(problem: Problem, loads: LoadSweep, district: number): LoadReport {
  const { keyPeak, keyPeakAtMs } = loads.steps;
  const peak = { ma: keyPeak[district] as number, atMs: keyPeakAtMs[district] as number };
  const limitMa = problem.districts[district]?.breakerMa ?? 0;
  return reportLoad(districtFunction(loads, district), peak, limitMa, problem.policy.reserve, loads.span);
}

export function reportSupply(problem: Problem, loads: LoadSweep, supply: number): LoadReport {
  const { groupPeak, groupPeakAtMs } = loads.steps;
  const peak = { ma: groupPeak[supply] as number, atMs: groupPeakAtMs[supply] as number };
  const limitMa = problem.supplies[supply]?.ratingMa ?? 0;
  return reportLoad(
    supplyFunction(problem, loads, supply),
    peak,
    limitMa,
    problem.policy.reserve,
    loads.span,
  );
}
