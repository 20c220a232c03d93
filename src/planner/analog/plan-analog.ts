import { cutIntoParts } from "../control/cut-into-parts.ts";
import type { Parts } from "../control/parts.ts";
import type { Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Interval, Problem } from "../problem.ts";
import type { AnalogReport, AnalogRun, LoadReport, StallReport } from "../result.ts";
import { sectionUses } from "../selectors/section-uses.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { createAllowance } from "./allowance.ts";
import { analogLoad } from "./analog-load.ts";
import { assignRuns } from "./assign-runs.ts";
import { buildRuns, type OpenRun } from "./build-runs.ts";
import { chooseOutputs } from "./choose-outputs.ts";
import { outputStallFindings, outputStalls } from "./output-stalls.ts";
import { type AnalogLoads, reportAnalogLoads } from "./report-analog-loads.ts";
import { reportOutputNeed } from "./report-output-need.ts";
import { serviceFindings } from "./service-findings.ts";

/**
 * States that one search for an assignment may visit: about a second on a plain machine. A branch with a dozen
 * outputs needs some hundreds.
 */
export const MOST_STATES = 20_000;

/** More than there are outputs and controllers. */
const WEIGHT_OF_STOPPING = 1_000_000;

export interface AnalogPlan {
  readonly report: AnalogReport;
  readonly outputs: LoadReport[];
  readonly controllers: LoadReport[];
  readonly findings: Finding[];
  /** The same runs on the same outputs with other currents. */
  loadsOf(problem: Problem): Pick<AnalogPlan, "outputs" | "controllers">;
}

/**
 * The analog side of the check (design section 6): which stretches each train needs one output for, an output for
 * each or the proof that this is impossible, and what outputs and transformers then carry. Exact within
 * `mostStates`.
 */
export function planAnalog(
  problem: Problem,
  motions: Motions,
  stock: StockPlan,
  parts: Parts = cutIntoParts(problem, motions),
  mostStates: number = MOST_STATES,
): AnalogPlan {
  const runs = buildRuns(problem, motions, stock, parts);
  const assignment = assignRuns(problem, runs, createAllowance(mostStates));
  const within = untilStoodDown(problem, motions, stock);
  const loadsOf = (given: readonly number[], drawing = problem) =>
    reportAnalogLoads(drawing, analogLoad(drawing, motions, runs, given), within);
  const uses = sectionUses({ problem, motions, stock, parts }, runs);
  const wrongOf = (loads: AnalogLoads, stalls: readonly (StallReport | null)[]) => [
    ...loads.findings,
    ...outputStallFindings(problem, stalls, loads.outputs),
  ];
  const { outputs, turns } = chooseOutputs(problem, runs, assignment, uses, (given) =>
    burden(wrongOf(loadsOf(given), outputStalls(problem, motions, runs, given))),
  );
  const loads = loadsOf(outputs);
  const stalls = outputStalls(problem, motions, runs, outputs);
  return {
    report: {
      status: assignment.status,
      runs: runs.map((run, index) => toAnalogRun(run, outputs[index] as number)),
      core: assignment.core,
      need: reportOutputNeed(problem, runs),
      turns,
    },
    outputs: loads.outputs.map((load, output) => ({ ...load, stall: stalls[output] ?? null })),
    controllers: loads.controllers,
    findings: [...serviceFindings(runs, assignment), ...wrongOf(loads, stalls)],
    loadsOf: (drawing) => loadsOf(outputs, drawing),
  };
}

/** How bad what outputs and transformers carry is: one that stops weighs more than any number that warn. */
function burden(findings: readonly Finding[]): number {
  const stops = findings.filter(({ severity }) => severity === "stops").length;
  return stops * WEIGHT_OF_STOPPING + findings.length;
}

/** The slot, or beyond its end until the last stock has stood down: what the digital loads cover too. */
function untilStoodDown({ slot }: Problem, motions: Motions, stock: StockPlan): Interval {
  let { endMs } = slot;
  for (const [train, timed] of motions.timed.entries())
    if (timed === 1) endMs = Math.max(endMs, stock.standToMs[train] as number);
  return { startMs: slot.startMs, endMs };
}

function toAnalogRun(run: OpenRun, output: number): AnalogRun {
  const { train, span, sections, sectionSpans, candidates, runningMa } = run;
  return { train, span, sections, sectionSpans, candidates, runningMa, output };
}
