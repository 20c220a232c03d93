import type { Locomotive, Problem, Train } from "../problem.ts";
import type { StallReport } from "../result.ts";
import { enginesMa, lightingMa } from "./analog-draw.ts";
import type { OpenRun } from "./build-runs.ts";

/**
 * What each output gives when one locomotive on it stalls, at worst: design section 5. One output drives one train at a
 * time, and on analog track a standing locomotive draws nothing, so the worst is that of some run while it moves. Null
 * where an output has no run with a locomotive. Of equal ones the first run. Cost: linear in runs.
 */
export function outputStalls(
  problem: Problem,
  runs: readonly OpenRun[],
  outputs: readonly number[],
): (StallReport | null)[] {
  const stalls: (StallReport | null)[] = problem.outputs.map(() => null);
  for (const [index, { train, departMs }] of runs.entries()) {
    const output = outputs[index] as number;
    if (output < 0) continue;
    const worst = worstEngine(problem, train);
    if (worst === null) continue;
    const ma = lightingMa(problem, train) + enginesMa(problem, train) + worst.moreMa;
    const before = stalls[output];
    if (before && before.ma >= ma) continue;
    stalls[output] = {
      ma,
      atMs: Math.max(departMs, problem.slot.startMs),
      locomotive: worst.locomotive,
      train,
    };
  }
  return stalls;
}

/** The engine that draws the most more when its wheels are held; the first of equal ones. */
function worstEngine(problem: Problem, train: number): { locomotive: number; moreMa: number } | null {
  let worst: { locomotive: number; moreMa: number } | null = null;
  for (const { locomotive } of (problem.trains[train] as Train).power) {
    const { stallMa, runningMa } = problem.locomotives[locomotive] as Locomotive;
    const moreMa = stallMa - runningMa;
    if (worst === null || moreMa > worst.moreMa) worst = { locomotive, moreMa };
  }
  return worst;
}
