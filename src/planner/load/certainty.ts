import type { AnalogPlan } from "../analog/plan-analog.ts";
import type { CurrentRange, Interval, Problem } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { digitalLoad, type LoadScene } from "./digital-load.ts";
import { type LoadSweep, reportDistrict, reportSupply, sweepLoads } from "./load-sweep.ts";

/** Loads with every current at its lowest, at its highest, and with those that nobody measured left out. */
export interface BoundedLoads {
  readonly low: Loads;
  readonly high: Loads;
  readonly measured: Loads;
}

interface Loads {
  readonly problem: Problem;
  readonly digital: LoadSweep;
  readonly analog: Pick<AnalogPlan, "outputs" | "controllers">;
}

type Bound = keyof BoundedLoads;

/** What districts, supplies, outputs and controllers bear at either end of what is known. Cost: three times the loads. */
export function boundLoads(scene: LoadScene, analog: AnalogPlan, covered: Interval): BoundedLoads {
  const loadsOf = (bound: Bound): Loads => {
    const problem = boundProblem(scene.problem, bound);
    const events = digitalLoad({ ...scene, stock: boundStock(problem, scene.stock) });
    return { problem, digital: sweepLoads(problem, events, covered), analog: analog.loadsOf(problem) };
  };
  return { low: loadsOf("low"), high: loadsOf("high"), measured: loadsOf("measured") };
}

/**
 * A load's peak with how far it may be off: the peaks of its lowest and highest curves, each wherever it is, so that low ≤
 * peak ≤ high; and how much of what trains draw at the peak's own instant was measured.
 */
export function withCertainty(report: LoadReport, bounds: Record<Bound, LoadReport>): LoadReport {
  const measuredMa = valueAt(bounds.measured.curve, report.peakAtMs) - report.constantMa;
  return {
    ...report,
    lowMa: bounds.low.peakMa,
    highMa: bounds.high.peakMa,
    measuredMa,
    assumedMa: report.peakMa - report.constantMa - measuredMa,
  };
}

const eachBound = (loads: BoundedLoads, report: (of: Loads) => LoadReport): Record<Bound, LoadReport> => ({
  low: report(loads.low),
  high: report(loads.high),
  measured: report(loads.measured),
});

export const districtBounds = (loads: BoundedLoads, district: number) =>
  eachBound(loads, ({ problem, digital }) => reportDistrict(problem, digital, district));

export const supplyBounds = (loads: BoundedLoads, supply: number) =>
  eachBound(loads, ({ problem, digital }) => reportSupply(problem, digital, supply));

export const outputBounds = (loads: BoundedLoads, output: number) =>
  eachBound(loads, ({ analog }) => analog.outputs[output] as LoadReport);

export const controllerBounds = (loads: BoundedLoads, controller: number) =>
  eachBound(loads, ({ analog }) => analog.controllers[controller] as LoadReport);

function valueAt(curve: LoadReport["curve"], ms: number): number {
  let value = 0;
  for (const [from, ma] of curve) {
    if (from > ms) break;
    value = ma;
  }
  return value;
}

/** The problem with its currents at a bound. Without a range a figure is taken as exact, and as assumed. */
function boundProblem(problem: Problem, bound: Bound): Problem {
  const at = (ma: number, range: CurrentRange | undefined) => {
    if (bound === "measured") return range?.measured ? ma : 0;
    if (range === undefined) return ma;
    return bound === "low" ? range.lowMa : range.highMa;
  };
  return {
    ...problem,
    locomotives: problem.locomotives.map((one) => ({
      ...one,
      runningMa: at(one.runningMa, one.ranges?.running),
      standingMa: at(one.standingMa, one.ranges?.standing),
    })),
    rakes: problem.rakes.map((one) => ({ ...one, lightingMa: at(one.lightingMa, one.range ?? undefined) })),
  };
}

function boundStock({ locomotives, rakes }: Problem, stock: StockPlan): StockPlan {
  const current = (item: number, state: "runningMa" | "standingMa") =>
    locomotives[item]?.[state] ?? rakes[item - locomotives.length]?.lightingMa ?? 0;
  return {
    ...stock,
    runningMa: stock.item.map((item) => current(item, "runningMa")),
    standingMa: stock.item.map((item) => current(item, "standingMa")),
  };
}
