import { createFinding, type Finding } from "../findings.ts";
import { callsOf, type Motions } from "../motion/motions.ts";
import type { Interval, Locomotive, Output, Problem, Train } from "../problem.ts";
import type { LoadReport, StallReport } from "../result.ts";
import { enginesMa, lightingMa } from "./analog-draw.ts";
import type { OpenRun } from "./build-runs.ts";

/**
 * What each output gives when one locomotive on it stalls, at worst: design section 5. One output drives one train at a
 * time, and on analog track a standing locomotive draws nothing, so the worst is that of some run while it moves; what runs
 * before the slot is nobody's load. Null where an output has no run with a locomotive. Of equal ones the first run. Cost:
 * linear in runs.
 */
export function outputStalls(
  problem: Problem,
  motions: Motions,
  runs: readonly OpenRun[],
  outputs: readonly number[],
): (StallReport | null)[] {
  const stalls: (StallReport | null)[] = problem.outputs.map(() => null);
  for (const [index, run] of runs.entries()) {
    const { train } = run;
    const output = outputs[index] as number;
    const worst = output < 0 ? null : worstEngine(problem, train);
    if (worst === null) continue;
    const moves = movesOf(problem, motions, run);
    const litMa = lightingMa(problem, train);
    const litMs = litMa > 0 ? firstInBoth(moves, run.litSpans) : null;
    const atMs = litMs ?? moves[0]?.startMs;
    if (atMs === undefined) continue;
    const ma = (litMs === null ? 0 : litMa) + enginesMa(problem, train) + worst.moreMa;
    const before = stalls[output];
    if (before && before.ma >= ma) continue;
    stalls[output] = { ma, atMs, locomotive: worst.locomotive, train };
  }
  return stalls;
}

/** When the train of a run moves in it, from the slot's start on. */
function movesOf({ slot }: Problem, motions: Motions, { train, departMs, arriveMs }: OpenRun): Interval[] {
  const moves: Interval[] = [];
  let leftMs: number | null = null;
  for (const call of callsOf(motions, train)) {
    if (leftMs !== null) {
      const startMs = Math.max(leftMs, departMs, slot.startMs);
      const endMs = Math.min(call.arriveMs, arriveMs);
      if (startMs < endMs) moves.push({ startMs, endMs });
    }
    leftMs = call.departMs;
  }
  return moves;
}

/** Both in order and apart. */
function firstInBoth(moves: readonly Interval[], lit: readonly Interval[]): number | null {
  for (const move of moves)
    for (const span of lit) {
      const startMs = Math.max(move.startMs, span.startMs);
      if (startMs < Math.min(move.endMs, span.endMs)) return startMs;
    }
  return null;
}

/**
 * Outputs that one stalled locomotive asks more of than they can give. One that its plain load is too much for already is
 * told of by that alone.
 */
export function outputStallFindings(
  problem: Problem,
  stalls: readonly (StallReport | null)[],
  loads: readonly LoadReport[],
): Finding[] {
  return stalls.flatMap((stall, output) => {
    const { ratingMa } = problem.outputs[output] as Output;
    if (stall === null || stall.ma <= ratingMa || (loads[output] as LoadReport).peakMa > ratingMa) return [];
    return [
      createFinding({
        code: "output-trips-on-stall",
        severity: "warns",
        span: { startMs: stall.atMs, endMs: stall.atMs + 1 },
        outputs: [output],
        locomotives: [stall.locomotive],
        trains: [stall.train],
        measured: stall.ma,
        limit: ratingMa,
        unit: "mA",
      }),
    ];
  });
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
