import { expect } from "vitest";
import type { Problem } from "../../src/planner/problem.ts";
import type { LoadReport } from "../../src/planner/result.ts";
import { runsBackwards } from "./journey.ts";
import type { Draw } from "./load.ts";
import { valueAt } from "./step-value.ts";
import { standsTo } from "./stock.ts";

/** What sampling every millisecond says of one load. */
export interface SampledLoad {
  readonly limitMa: number;
  readonly constantMa: number;
  /** Who draws what, one list a millisecond from the slot's start on. */
  readonly draws: readonly (readonly Pick<Draw, "train" | "ma">[])[];
}

/** Milliseconds that loads cover: the slot, or beyond its end until the last stock has stood down. */
export function coveredMs(problem: Problem): number[] {
  const { startMs, endMs } = problem.slot;
  const stands = problem.trains.flatMap((train, at) => (runsBackwards(train) ? [] : [standsTo(problem, at)]));
  const last = Math.max(endMs, ...stands);
  return Array.from({ length: last - startMs }, (_, at) => startMs + at);
}

/** Milliseconds in which a handset or an output may be needed: before the slot too. */
export function needMs(problem: Problem): number[] {
  const { pickUpMs, handInMs, setUpMs, releaseMs } = problem.policy;
  const from = problem.slot.startMs - pickUpMs - setUpMs - 50;
  const to = coveredMs(problem).at(-1) as number;
  return Array.from({ length: to + handInMs + releaseMs + 2 - from }, (_, at) => from + at);
}

/**
 * Holds a report against its samples: every value of the curve, the peak, when, who, how long above either limit.
 */
export function expectLoad(problem: Problem, report: LoadReport, sampled: SampledLoad): void {
  const { startMs } = problem.slot;
  const values = sampled.draws.map((draws) => draws.reduce((sum, { ma }) => sum + ma, sampled.constantMa));
  const peakMa = Math.max(0, ...values);
  const peakAt = peakMa > sampled.constantMa ? values.indexOf(peakMa) : 0;
  const line = Math.round(sampled.limitMa * (1 - problem.policy.reserve) * 1e6) / 1e6;
  expect(values.map((_, at) => valueAt(report.curve, startMs + at))).toEqual(values);
  expect(report).toMatchObject({
    limitMa: sampled.limitMa,
    reserveMa: line,
    constantMa: sampled.constantMa,
    peakMa,
    peakAtMs: startMs + peakAt,
    shares: sharesOf(sampled.draws[peakAt] ?? []),
    overLimitMs: values.filter((value) => value > sampled.limitMa).length,
    overReserveMs: values.filter((value) => value > line).length,
  });
}

/** By train, those that draw nothing left out, the largest first. */
function sharesOf(draws: readonly Pick<Draw, "train" | "ma">[]): { train: number; ma: number }[] {
  const byTrain = new Map<number, number>();
  for (const { train, ma } of draws) byTrain.set(train, (byTrain.get(train) ?? 0) + ma);
  return [...byTrain]
    .map(([train, ma]) => ({ train, ma }))
    .filter(({ ma }) => ma !== 0)
    .sort((a, b) => b.ma - a.ma || a.train - b.train);
}
