import { createFinding, type Finding } from "../findings.ts";
import type { Needs } from "../handsets/handset-need.ts";
import type { CommandSystem, Problem, Train } from "../problem.ts";
import { sharesAt, stepCurve, timeAbove } from "../steps/step-curve.ts";
import { createStepEvents, putStep } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";

/**
 * Whether a command system is ever asked for more handsets or addresses at once than it drives. A train uses the addresses
 * of its decoders as long as it needs a handset. Nothing for a system without such a limit. Cost: sorting the needs.
 */
export function findCrowded(problem: Problem, needs: Needs, system: number): Finding[] {
  const { mostHandsets, mostAddresses } = problem.commandSystems[system] as CommandSystem;
  const found: Finding[] = [];
  if (mostHandsets > 0)
    found.push(...above(problem, needs, system, "handsets-too-many", mostHandsets, () => 1));
  if (mostAddresses > 0)
    found.push(
      ...above(problem, needs, system, "addresses-too-many", mostAddresses, (train) =>
        addressesOf(problem, train),
      ),
    );
  return found;
}

/** The most decoder addresses that a command system is asked for at once. Cost: sorting the needs. */
export function mostAddressesAtOnce(problem: Problem, needs: Needs, system: number): number {
  return sweepAtOnce(problem, needs, system, (train) => addressesOf(problem, train)).groupPeak[0] as number;
}

function addressesOf({ trains, locomotives }: Problem, train: number): number {
  const engines = new Set((trains[train] as Train).power.map(({ locomotive }) => locomotive));
  return [...engines].filter((engine) => locomotives[engine]?.decoder).length;
}

function above(
  problem: Problem,
  needs: Needs,
  system: number,
  code: "handsets-too-many" | "addresses-too-many",
  most: number,
  weigh: (train: number) => number,
): Finding[] {
  const sweep = sweepAtOnce(problem, needs, system, weigh);
  const peak = sweep.groupPeak[0] as number;
  if (peak <= most) return [];
  const of = { sweep, group: 0, key: null, constant: 0 };
  const atMs = sweep.groupPeakAtMs[0] as number;
  const curve = stepCurve(of, { startMs: sweep.sorted.time[0] as number, endMs: Number.MAX_SAFE_INTEGER });
  const high = timeAbove(curve, most, 0);
  if (high === null) throw new Error("what is above its limit is so for some time");
  return [
    createFinding({
      code,
      severity: "stops",
      span: high.span,
      trains: sharesAt(of, atMs)
        .map(({ train }) => train)
        .sort((a, b) => a - b),
      commandSystems: [system],
      measured: peak,
      limit: most,
      unit: code === "handsets-too-many" ? "handsets" : "addresses",
      atMs,
      overMs: high.totalMs,
    }),
  ];
}

function sweepAtOnce(
  { slot }: Problem,
  needs: Needs,
  system: number,
  weigh: (train: number) => number,
): StepSweep {
  const events = createStepEvents(2 * needs.count);
  for (let i = 0; i < needs.count; i++) {
    const train = needs.train[i] as number;
    const weight = needs.system[i] === system ? weigh(train) : 0;
    if (weight === 0) continue;
    putStep(events, 0, needs.fromMs[i] as number, weight, train);
    putStep(events, 0, needs.toMs[i] as number, -weight, train);
  }
  return sweepSteps(events, new Int32Array(1), new Int32Array(1), slot.startMs);
}
