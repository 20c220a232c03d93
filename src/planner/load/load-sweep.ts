import type { District, Interval, Problem, Supply } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import { hotRows, type StepLines } from "../steps/hot-rows.ts";
import { cutSlices } from "../steps/rough-steps.ts";
import type { StepFunction } from "../steps/step-curve.ts";
import { createStepEvents, type StepEvents } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";
import { addTrainLoad, type LoadScene } from "./digital-load.ts";
import { reserveLine } from "./limits.ts";
import { reportLoad } from "./load-report.ts";
import { type RoughLoad, roughLoad } from "./rough-load.ts";

/** Loads of districts (keys of the sweep) and supplies (its groups) over `span`. */
export interface LoadSweep {
  readonly steps: StepSweep;
  /** What the loads cover: from the slot's start to its end or, if later, the last event. */
  readonly span: Interval;
}

export function sweepLoads(problem: Problem, events: StepEvents, span: Interval): LoadSweep {
  return { steps: sweepSteps(events, supplyOfDistrict(problem), accessories(problem), span.startMs), span };
}

/**
 * The same for districts and supplies that are ever above their reserve's line, and for the others loads that stay on
 * or below it: enough to find what is too high, at a fraction of the work. Trains that are in no district while it can
 * be too high are left out.
 */
export function sweepHighLoads(scene: LoadScene, span: Interval): LoadSweep {
  const { problem, motions } = scene;
  const slices = cutSlices(span, problem.districts.length, 2 * motions.section.length);
  const rough = roughLoad(scene, slices);
  const hot = hotRows(rough.steps, reserveLines(problem));
  return sweepLoads(problem, loadWhereHot(scene, rough, hot), span);
}

function loadWhereHot(scene: LoadScene, { steps, firstRow }: RoughLoad, hot: Uint8Array): StepEvents {
  const events = createStepEvents(2 * steps.count);
  const wantedBy = new Int32Array(scene.problem.districts.length).fill(-1);
  for (let train = 0; train < scene.motions.timed.length; train++) {
    const end = firstRow[train + 1] as number;
    let isWanted = false;
    for (let i = firstRow[train] as number; i < end; i++) {
      if (hot[i] === 0) continue;
      wantedBy[steps.key[i] as number] = train;
      isWanted = true;
    }
    if (isWanted) addTrainLoad(scene, events, train, wantedBy);
  }
  return events;
}

function reserveLines(problem: Problem): StepLines {
  const { districts, supplies } = problem;
  const { reserve } = problem.policy;
  const lines: StepLines = {
    groupOf: supplyOfDistrict(problem),
    key: new Float64Array(districts.length),
    group: new Float64Array(supplies.length),
  };
  for (let i = 0; i < districts.length; i++)
    lines.key[i] = reserveLine((districts[i] as District).breakerMa, reserve);
  for (let i = 0; i < supplies.length; i++) {
    const { ratingMa, accessoryMa } = supplies[i] as Supply;
    lines.group[i] = reserveLine(ratingMa, reserve) - accessoryMa;
  }
  return lines;
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

/** Whether a district's plain load ever opens its breaker. */
export function trips({ districts }: Problem, { steps }: LoadSweep, district: number): boolean {
  return (steps.keyPeak[district] as number) > (districts[district] as District).breakerMa;
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
