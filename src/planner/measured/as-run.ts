import type { Problem, Train } from "../problem.ts";

/** A locomotive that failed in a train, and the one that took its place; −1: none did. By index, at ms of the session. */
export interface Replaced {
  readonly train: number;
  readonly locomotive: number;
  readonly by: number;
  readonly atMs: number;
}

export interface AsRun {
  readonly problem: Problem;
  /** Whether a locomotive stands about for a train that it had worked before it failed: it was taken off the track. */
  isOffTrack(train: number, locomotive: number): boolean;
}

/**
 * The plan with what took the place of failed locomotives, all of it at once; so it holds from the last of these on. In
 * order of time. A failed locomotive is off the track until it stands in somewhere itself, or a train that departs later
 * has it. Cost: linear in trains and replacements.
 */
export function asRun(problem: Problem, replaced: readonly Replaced[]): AsRun {
  if (replaced.length === 0) return { problem, isOffTrack: () => false };
  const failedMs = new Map<number, number>();
  const trains = [...problem.trains];
  for (const { train, locomotive, by, atMs } of replaced) {
    const working = trains[train];
    if (working === undefined) continue;
    trains[train] = withInstead(problem, working, locomotive, by);
    failedMs.set(locomotive, atMs);
    failedMs.delete(by);
  }
  const departMs = (train: number) => problem.trains[train]?.path[0]?.departMs ?? Number.POSITIVE_INFINITY;
  return {
    problem: { ...problem, trains },
    isOffTrack: (train, locomotive) =>
      departMs(train) <= (failedMs.get(locomotive) ?? Number.NEGATIVE_INFINITY),
  };
}

function withInstead({ locomotives }: Problem, train: Train, failed: number, by: number): Train {
  const lengthOf = (at: number) => locomotives[at]?.lengthMm ?? 0;
  const power = train.power.flatMap((one) =>
    one.locomotive !== failed ? [one] : by < 0 ? [] : [{ ...one, locomotive: by }],
  );
  const places = train.power.filter(({ locomotive }) => locomotive === failed).length;
  // one that failed without another in its place is still pushed along
  const longer = by < 0 ? 0 : places * (lengthOf(by) - lengthOf(failed));
  return { ...train, power, lengthMm: train.lengthMm + longer };
}
