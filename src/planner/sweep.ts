import { addressFindings } from "./addresses/address-findings.ts";
import { type AnalogPlan, MOST_STATES, planAnalog } from "./analog/plan-analog.ts";
import { busyFindings, busyTimes } from "./capacity/busy-sections.ts";
import type { Plan } from "./compile-plan.ts";
import { compareFindings } from "./finding-order.ts";
import type { Finding } from "./findings.ts";
import { handsetFindings } from "./handsets/handset-findings.ts";
import { handsetNeeds, type Needs } from "./handsets/handset-need.ts";
import { sweepShortNeeds } from "./handsets/need-report.ts";
import { planHandsets } from "./handsets/plan-handsets.ts";
import { createLoadScene } from "./load/digital-load.ts";
import { loadFindings } from "./load/load-findings.ts";
import { sweepHighLoads, trips } from "./load/load-sweep.ts";
import { surgeFindings } from "./load/surge-findings.ts";
import { sweepSurges } from "./load/surges.ts";
import type { Motions } from "./motion/motions.ts";
import { clashFindings } from "./occupation/clash-findings.ts";
import { type Occupations, occupy, sweepClashes } from "./occupation/occupations.ts";
import { sharedFindings } from "./occupation/shared-sections.ts";
import { pathFindings } from "./path/path-findings.ts";
import { crewFindings } from "./people/crew-findings.ts";
import type { Interval, Problem } from "./problem.ts";
import type { HandsetSharing } from "./result.ts";
import { stockFindings } from "./stock/stock-findings.ts";
import type { StockPlan } from "./stock/stock-plan.ts";
import { wiringFindings } from "./wiring/wiring-findings.ts";

/** Meetings of two trains on one section that a check follows: far more than anybody can mend one by one. */
const MOST_CLASHES = 100_000;

/** All findings, in order, and what the report for people is made from. */
export interface Sweep {
  readonly findings: readonly Finding[];
  /** Whether there were more clashes than were followed. */
  readonly cut: boolean;
  readonly plan: Plan;
  readonly occupations: Occupations;
  readonly needs: Needs;
  /** One a command system. */
  readonly sharings: readonly HandsetSharing[];
  readonly analog: AnalogPlan;
}

/** Every pass of the check, and its findings; see each for what it needs and costs. `mostStates`: see planAnalog. */
export function sweepPlan(plan: Plan, mostStates: number = MOST_STATES): Sweep {
  const { problem, track, motions, stock, parts } = plan;
  const occupations = occupy(problem, motions, stock);
  const clashes = sweepClashes(motions, occupations, track.exclusive, stock, MOST_CLASHES);
  const scene = createLoadScene(plan);
  const loads = sweepHighLoads(scene, coverage(problem, motions, stock));
  const surges = sweepSurges(scene);
  const needs = handsetNeeds(plan);
  const analog = planAnalog(problem, motions, stock, parts, mostStates);
  const shortNeeds = sweepShortNeeds(problem, needs);
  const isShort = (system: number) =>
    (shortNeeds.groupPeak[system] as number) > (problem.commandSystems[system]?.handsets ?? 0);
  const handsets = planHandsets(plan, needs, isShort);
  const findings = [
    ...pathFindings(plan),
    ...stockFindings(problem, motions, stock),
    ...clashFindings(motions, occupations, clashes),
    ...sharedFindings(problem, motions, occupations, stock),
    ...loadFindings(problem, loads),
    ...surgeFindings(scene, surges, (district) => trips(problem, loads, district)),
    ...wiringFindings(problem, surges.surges),
    ...busyFindings(problem, busyTimes(problem, motions), track.exclusive),
    ...handsetFindings(problem, shortNeeds),
    ...addressFindings(plan, needs),
    ...handsets.findings,
    ...crewFindings(plan),
    ...analog.findings,
  ].sort(compareFindings);
  return { findings, cut: clashes.cut, plan, occupations, needs, sharings: handsets.sharings, analog };
}

/** What load reports cover: the slot, or beyond its end until the last stock has stood down. */
export function coverage(problem: Problem, motions: Motions, stock: StockPlan): Interval {
  let { startMs, endMs } = problem.slot;
  for (let train = 0; train < problem.trains.length; train++)
    if (motions.timed[train] === 1) endMs = Math.max(endMs, stock.standToMs[train] as number);
  return { startMs, endMs };
}
