import type { Parts } from "../control/parts.ts";
import type { Motions } from "../motion/motions.ts";
import type { Interval, Problem, Section } from "../problem.ts";
import type { AnalogRun } from "../result.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { enginesMa, lightingMa } from "./analog-draw.ts";
import { cutRuns } from "./cut-runs.ts";
import { handOver } from "./hand-over.ts";
import { digitalStays, type Stay, staysOfRun } from "./stays.ts";

/** A run of the plan, not yet served, and when its train leaves its first stand and comes to its last. */
export interface OpenRun extends Omit<AnalogRun, "output"> {
  readonly departMs: number;
  readonly arriveMs: number;
  /** When the train stands or moves in sections all switched to its output; in order, apart. */
  readonly litSpans: readonly Interval[];
}

/**
 * The runs of all workings with what each needs, by start, end, train. Runs that are in no section that anything
 * feeds are left out: a fault of the path. Cost: linear in path entries, sorting aside.
 */
export function buildRuns(problem: Problem, motions: Motions, stock: StockPlan, parts: Parts): OpenRun[] {
  const scene = { problem, motions, stock, parts };
  const runs = cutRuns(problem.policy, motions, parts)
    .map((run) => ({ run, stays: staysOfRun(scene, run) }))
    .filter(({ stays }) => stays.length > 0);
  if (runs.length === 0) return [];
  const all = runs.flatMap(({ stays }) => stays);
  const handed = handOver(problem.policy, [...all, ...digitalStays(scene)], stock);
  let next = 0;
  const open = runs.map(({ run, stays }): OpenRun => {
    const mine = handed.slice(next, next + stays.length).sort((a, b) => a.span.startMs - b.span.startMs);
    next += stays.length;
    return {
      train: run.train,
      span: { startMs: run.startMs, endMs: run.endMs },
      departMs: run.departMs,
      arriveMs: run.arriveMs,
      sections: mine.map(({ section }) => section),
      sectionSpans: mine.map(({ span }: Stay) => span),
      litSpans: litSpans(mine),
      candidates: outputsReaching(
        problem,
        mine.map(({ section }) => section),
      ),
      runningMa: enginesMa(problem, run.train) + lightingMa(problem, run.train),
    };
  });
  return open.sort(
    (a, b) => a.span.startMs - b.span.startMs || a.span.endMs - b.span.endMs || a.train - b.train,
  );
}

/**
 * A train is its run's from when the last of the sections that it begins in is switched, until the first of those that it
 * ends in is handed on: what goes on as another train is lit once.
 */
function litSpans(stays: readonly Stay[]): Interval[] {
  let sinceMs = -Infinity;
  let untilMs = Infinity;
  for (const { span, inside } of stays) {
    if (inside.some(({ startMs }) => startMs < span.startMs)) sinceMs = Math.max(sinceMs, span.startMs);
    if (inside.some(({ endMs }) => endMs > span.endMs)) untilMs = Math.min(untilMs, span.endMs);
  }
  const all = stays.flatMap(({ inside }) => inside).sort((a, b) => a.startMs - b.startMs);
  const lit: Interval[] = [];
  for (const each of all) {
    const startMs = Math.max(each.startMs, sinceMs);
    const endMs = Math.min(each.endMs, untilMs);
    const last = lit.at(-1);
    if (startMs >= endMs) continue;
    if (last && startMs <= last.endMs) lit[lit.length - 1] = { ...last, endMs: Math.max(last.endMs, endMs) };
    else lit.push({ startMs, endMs });
  }
  return lit;
}

/** Outputs that reach all of at least one section, ascending: none where one has no selector. */
export function outputsReaching(problem: Problem, sections: readonly number[]): number[] {
  const [first, ...others] = sections.map((at) => new Set((problem.sections[at] as Section).outputs));
  return [...(first ?? [])]
    .filter((output) => others.every((reach) => reach.has(output)))
    .sort((a, b) => a - b);
}
