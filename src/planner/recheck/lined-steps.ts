import { reserveLine } from "../load/limits.ts";
import type { CommandSystem, District, Problem, Supply } from "../problem.ts";
import { changeStep, createSlicedSteps, peakOf, type SlicedSteps, settleSlice } from "./sliced-steps.ts";

/**
 * Loads and needs as functions against their limits: districts first, then supplies, then command systems. A change of
 * a district's load is one of its supply's too.
 */
export interface LinedSteps {
  readonly steps: SlicedSteps;
  readonly districts: number;
  readonly supplyOf: Int32Array;
  /** A supply's accessories are taken off. */
  readonly limit: Float64Array;
  readonly close: Float64Array;
  /** Of each function 2 above its limit, 1 above the reserve's line, else 0. */
  readonly level: Uint8Array;
}

/** @param expected about how many steps each function will hold */
export function createLinedSteps(problem: Problem, expected: Int32Array): LinedSteps {
  const { districts, supplies, commandSystems, slot, policy } = problem;
  const limit = [
    ...districts.map(({ breakerMa }: District) => breakerMa),
    ...supplies.map(({ ratingMa, accessoryMa }: Supply) => ratingMa - accessoryMa),
    ...commandSystems.map(({ handsets }: CommandSystem) => handsets),
  ];
  const close = [
    ...districts.map(({ breakerMa }: District) => reserveLine(breakerMa, policy.reserve)),
    ...supplies.map(({ ratingMa, accessoryMa }) => reserveLine(ratingMa, policy.reserve) - accessoryMa),
    ...commandSystems.map(({ handsets }) => handsets),
  ];
  const lined: LinedSteps = {
    steps: createSlicedSteps(expected, slot.startMs, slot.endMs),
    districts: districts.length,
    supplyOf: Int32Array.from(districts, ({ supply }) => districts.length + supply),
    limit: Float64Array.from(limit),
    close: Float64Array.from(close),
    level: new Uint8Array(limit.length),
  };
  for (let of = 0; of < limit.length; of++) judge(lined, of);
  return lined;
}

export function changeLoad(lined: LinedSteps, district: number, ms: number, ma: number): void {
  changeStep(lined.steps, district, ms, ma);
  changeStep(lined.steps, lined.supplyOf[district] as number, ms, ma);
}

/** Brings peaks and levels up to date. */
export function judgeChanged(lined: LinedSteps): void {
  const { dirty } = lined.steps;
  for (let i = 0; i < dirty.length; i += 2) {
    settleSlice(lined.steps, dirty[i] as number, dirty[i + 1] as number);
    judge(lined, dirty[i] as number);
  }
  dirty.length = 0;
}

function judge({ steps, limit, close, level }: LinedSteps, of: number): void {
  const peak = peakOf(steps, of);
  level[of] = 0;
  if (peak > (close[of] as number)) level[of] = 1;
  if (peak > (limit[of] as number)) level[of] = 2;
}
