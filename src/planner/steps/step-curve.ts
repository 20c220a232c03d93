import type { Share } from "../findings.ts";
import type { Interval } from "../problem.ts";
import type { StepSweep } from "./sweep-steps.ts";

/** One step function out of a sweep: a key's own, or (key null) the sum of its group with a constant. */
export interface StepFunction {
  readonly sweep: StepSweep;
  readonly group: number;
  readonly key: number | null;
  readonly constant: number;
}

type Step = readonly [atMs: number, value: number];

/**
 * The function's steps from `span.startMs` on, before `span.endMs`, each with a value unlike the one before it; before
 * the first it is 0. Cost: linear in the group's events.
 */
export function stepCurve(of: StepFunction, span: Interval): Step[] {
  const { sorted, events } = of.sweep;
  const end = sorted.start[of.group + 1] as number;
  const curve: Step[] = [];
  let value = of.constant;
  let shown = 0;
  let ms = span.startMs;
  for (let i = sorted.start[of.group] as number; i < end; i++) {
    const event = sorted.row[i] as number;
    if (of.key !== null && events.key[event] !== of.key) continue;
    const at = sorted.time[i] as number;
    if (at > ms) {
      if (value !== shown && ms < span.endMs) curve.push([ms, value]);
      shown = value;
      ms = at;
    }
    value += events.change[event] as number;
  }
  if (value !== shown && ms < span.endMs) curve.push([ms, value]);
  return curve;
}

/** How long, from when and until when a curve is above a limit; the last step holds until `endMs`. Null: never. */
export function timeAbove(
  curve: readonly Step[],
  limit: number,
  endMs: number,
): { readonly totalMs: number; readonly span: Interval } | null {
  let totalMs = 0;
  let startMs: number | null = null;
  let lastMs = 0;
  for (let i = 0; i < curve.length; i++) {
    const [ms, value] = curve[i] as Step;
    if (value <= limit) continue;
    const until = curve[i + 1]?.[0] ?? endMs;
    totalMs += until - ms;
    startMs ??= ms;
    lastMs = until;
  }
  return startMs === null ? null : { totalMs, span: { startMs, endMs: lastMs } };
}

/** Who makes up the function's value at an instant, constant left out: largest share first, then by train. */
export function sharesAt(of: StepFunction, atMs: number): Share[] {
  const { sorted, events } = of.sweep;
  const end = sorted.start[of.group + 1] as number;
  const byTrain = new Map<number, number>();
  for (let i = sorted.start[of.group] as number; i < end && (sorted.time[i] as number) <= atMs; i++) {
    const event = sorted.row[i] as number;
    if (of.key !== null && events.key[event] !== of.key) continue;
    const train = events.train[event] as number;
    byTrain.set(train, (byTrain.get(train) ?? 0) + (events.change[event] as number));
  }
  const shares: Share[] = [];
  for (const [train, ma] of byTrain) if (ma !== 0) shares.push({ train, ma });
  return shares.sort((a, b) => b.ma - a.ma || a.train - b.train);
}
