import type { District, Interval, Problem, Supply } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import type { StepFunction } from "../steps/step-curve.ts";
import { type StepEvents, stepsOfKeys } from "../steps/step-events.ts";
import { stepsAbove } from "../steps/steps-above.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";
import { reserveLine } from "./limits.ts";
import { reportLoad } from "./load-report.ts";

/** Loads of districts (keys of the sweep) and supplies (its groups) over `span`. */
export interface LoadSweep {
  readonly steps: StepSweep;
  /** What the loads cover: from the slot's start to its end or, if later, the last event. */
  readonly span: Interval;
}

/** Only what is above the reserve's line is swept: these districts and supplies. */
export interface HighLoads extends LoadSweep {
  readonly districts: readonly number[];
  readonly supplies: readonly number[];
}

export function sweepLoads(problem: Problem, events: StepEvents, span: Interval): LoadSweep {
  return { steps: sweepSteps(events, supplyOfDistrict(problem), accessories(problem), span.startMs), span };
}

/** The loads above the reserve's line, the others only looked at as far as it takes to know that they are not. */
export function sweepHighLoads(problem: Problem, events: StepEvents, span: Interval): HighLoads {
  const supplyOf = supplyOfDistrict(problem);
  const constants = accessories(problem);
  const above = stepsAbove({ events, groupOfKey: supplyOf, constants, span, ...reserveLines(problem) });
  // a supply's sum needs all of its districts
  const wanted = above.keys.slice();
  for (let district = 0; district < wanted.length; district++)
    if (above.groups[supplyOf[district] as number] === 1) wanted[district] = 1;
  const steps = sweepSteps(stepsOfKeys(events, wanted), supplyOf, constants, span.startMs);
  return { steps, span, districts: marked(above.keys), supplies: marked(above.groups) };
}

function reserveLines({ districts, supplies, policy }: Problem) {
  const keyLine = new Float64Array(districts.length);
  for (let i = 0; i < keyLine.length; i++)
    keyLine[i] = reserveLine((districts[i] as District).breakerMa, policy.reserve);
  const groupLine = new Float64Array(supplies.length);
  for (let i = 0; i < groupLine.length; i++)
    groupLine[i] = reserveLine((supplies[i] as Supply).ratingMa, policy.reserve);
  return { keyLine, groupLine };
}

function marked(marks: Uint8Array): number[] {
  const indexes: number[] = [];
  for (let i = 0; i < marks.length; i++) if (marks[i] === 1) indexes.push(i);
  return indexes;
}

function supplyOfDistrict({ districts }: Problem): Int32Array {
  const supplyOf = new Int32Array(districts.length);
  for (let i = 0; i < supplyOf.length; i++) supplyOf[i] = (districts[i] as District).supply;
  return supplyOf;
}

function accessories({ supplies }: Problem): Int32Array {
  const constants = new Int32Array(supplies.length);
  for (let i = 0; i < constants.length; i++) constants[i] = (supplies[i] as Supply).accessoryMa;
  return constants;
}

export function reportDistrict(problem: Problem, { steps, span }: LoadSweep, district: number): LoadReport {
  const { supply, breakerMa } = problem.districts[district] as District;
  const of: StepFunction = { sweep: steps, group: supply, key: district, constant: 0 };
  const peak = { ma: steps.keyPeak[district] as number, atMs: steps.keyPeakAtMs[district] as number };
  return reportLoad(of, peak, breakerMa, problem.policy.reserve, span);
}

export function reportSupply(problem: Problem, { steps, span }: LoadSweep, supply: number): LoadReport {
  const { ratingMa, accessoryMa } = problem.supplies[supply] as Supply;
  const of: StepFunction = { sweep: steps, group: supply, key: null, constant: accessoryMa };
  const peak = { ma: steps.groupPeak[supply] as number, atMs: steps.groupPeakAtMs[supply] as number };
  return reportLoad(of, peak, ratingMa, problem.policy.reserve, span);
}
