import { busyTimes, reportBusy } from "./capacity/busy-sections.ts";
import { pushTogether } from "./capacity/pushed-together.ts";
import { compilePlan } from "./compile-plan.ts";
import { reportNeed, sweepNeeds } from "./handsets/need-report.ts";
import {
  boundLoads,
  controllerBounds,
  districtBounds,
  outputBounds,
  supplyBounds,
  withCertainty,
} from "./load/certainty.ts";
import { createLoadScene, digitalLoad } from "./load/digital-load.ts";
import { reportDistrict, reportSupply, sweepLoads } from "./load/load-sweep.ts";
import { reportRestart, reportStall } from "./load/surge-reports.ts";
import { sweepSurges } from "./load/surges.ts";
import { reportOccupations } from "./occupation/report-occupations.ts";
import type { Problem } from "./problem.ts";
import type { CheckResult, HandsetSharing } from "./result.ts";
import { coverage, type Sweep, sweepPlan } from "./sweep.ts";

/** Most findings that a result lists unless told otherwise; beyond them it says how many more there are. */
export const MOST_FINDINGS = 1_000;

export interface CheckOptions {
  readonly mostFindings?: number;
  /** Most states of one search for an output assignment before it is left undecided. */
  readonly mostStates?: number;
}

/** Whether a session runs as planned, and everything to see it by. Same problem, same result. */
export function check(problem: Problem, options: CheckOptions = {}): CheckResult {
  return report(sweepPlan(compilePlan(problem), options.mostStates), options.mostFindings);
}

/** What people look at: occupations, every curve. Cost: linear in occupations and, by district, in its supply's events. */
export function report(sweep: Sweep, mostFindings: number = MOST_FINDINGS): CheckResult {
  const { findings, plan, occupations, needs, sharings, analog } = sweep;
  const { problem, motions, stock, track } = plan;
  const handsets = sweepNeeds(problem, needs);
  const scene = createLoadScene(plan);
  const loads = sweepLoads(problem, digitalLoad(scene), coverage(problem, motions, stock));
  const surges = sweepSurges(scene);
  const bounds = boundLoads(scene, analog, coverage(problem, motions, stock));
  return {
    findings: findings.slice(0, mostFindings),
    findingsLeftOut: Math.max(0, findings.length - mostFindings),
    complete: !sweep.cut,
    occupations: reportOccupations(motions, occupations),
    districts: problem.districts.map((_, district) => ({
      ...withCertainty(reportDistrict(problem, loads, district), districtBounds(bounds, district)),
      stall: reportStall(scene, surges, district),
      restart: reportRestart(scene, surges, district),
    })),
    supplies: problem.supplies.map((_, supply) =>
      withCertainty(reportSupply(problem, loads, supply), supplyBounds(bounds, supply)),
    ),
    outputs: analog.outputs.map((output, i) => withCertainty(output, outputBounds(bounds, i))),
    controllers: analog.controllers.map((load, i) => withCertainty(load, controllerBounds(bounds, i))),
    handsets: problem.commandSystems.map((system, index) => ({
      ...reportNeed(handsets, index, system.handsets),
      sharing: sharings[index] as HandsetSharing,
    })),
    analog: analog.report,
    capacity: reportBusy(problem, busyTimes(problem, motions)),
    pushedTogether: pushTogether(problem, motions, track.exclusive),
  };
}
