import { cutIntoParts } from "../control/cut-into-parts.ts";
import type { Parts } from "../control/parts.ts";
import type { Finding } from "../findings.ts";
import type { Motions } from "../motion/motions.ts";
import type { Interval, Problem } from "../problem.ts";
import type { AnalogReport, AnalogRun, LoadReport } from "../result.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { createAllowance } from "./allowance.ts";
import { analogLoad } from "./analog-load.ts";
import { assignRuns } from "./assign-runs.ts";
import { buildRuns, type OpenRun } from "./build-runs.ts";
import { outputStalls } from "./output-stalls.ts";
import { reportAnalogLoads } from "./report-analog-loads.ts";
import { reportOutputNeed } from "./report-output-need.ts";
import { serviceFindings } from "./service-findings.ts";

/**
 * States that one search for an assignment may visit: about a second on a plain machine. A branch with a dozen
 * outputs needs some hundreds.
 */
export const MOST_STATES = 20_000;

export interface AnalogPlan {
  readonly report: AnalogReport;
  readonly outputs: LoadReport[];
  readonly controllers: LoadReport[];
  readonly findings: Finding[];
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
  const events = analogLoad(problem, motions, runs, assignment.outputs);
  const loads = reportAnalogLoads(problem, events, untilStoodDown(problem, motions, stock));
  const stalls = outputStalls(problem, runs, assignment.outputs);
  return {
    report: {
      status: assignment.status,
      runs: runs.map((run, index) => toAnalogRun(run, assignment.outputs[index] as number)),
      core: assignment.core,
      need: reportOutputNeed(problem, runs),
    },
    outputs: loads.outputs.map((load, output) => ({ ...load, stall: stalls[output] ?? null })),
    controllers: loads.controllers,
    findings: [...serviceFindings(runs, assignment), ...loads.findings],
  };
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
