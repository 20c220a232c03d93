import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import { lastArrival } from "../motion/motions.ts";
import type { PathEntry, Train } from "../problem.ts";
import { instant } from "./train-instants.ts";

/**
 * Stated times below the one before in path order, and runs between two timed points in no time at all; measured: ms
 * back. In a path of one entry the departure comes before the arrival. Such a train is left out of everything else
 * that needs instants. Cost: linear in path entries of those trains.
 */
export function backwardsTimes({ problem, motions }: Plan): Finding[] {
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++)
    if (motions.timed[train] === 0) findings.push(...faultsOf(problem.trains[train] as Train, train));
  return findings;
}

function faultsOf({ path }: Train, train: number): Finding[] {
  const findings: Finding[] = [];
  let latest: number | null = null;
  path.forEach((stated, entry) => {
    statedTimes(stated, path.length === 1).forEach((ms, position) => {
      const runsInNoTime = ms === latest && position === 0;
      if (latest !== null && (ms < latest || runsInNoTime))
        findings.push(
          createFinding({
            code: "path-times-backwards",
            severity: "stops",
            span: instant(ms),
            trains: [train],
            sections: [stated.section],
            measured: latest - ms,
            limit: 0,
            unit: "ms",
            pathEntry: entry,
          }),
        );
      latest = ms;
    });
  });
  return findings;
}

function statedTimes({ arriveMs, departMs }: PathEntry, alone: boolean): number[] {
  const inOrder = alone ? [departMs, arriveMs] : [arriveMs, departMs];
  return inOrder.filter((ms) => ms !== null);
}

/** Trains that arrive after the slot has ended; measured: by how much. */
export function lateTrains({ problem, motions }: Plan): Finding[] {
  const { endMs } = problem.slot;
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    if (motions.timed[train] === 0 || lastArrival(motions, train) <= endMs) continue;
    const arrives = lastArrival(motions, train);
    findings.push(
      createFinding({
        code: "train-outside-slot",
        severity: "warns",
        span: { startMs: endMs, endMs: arrives },
        trains: [train],
        measured: arrives - endMs,
        limit: 0,
        unit: "ms",
      }),
    );
  }
  return findings;
}
