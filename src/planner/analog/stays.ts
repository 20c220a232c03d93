import { ALWAYS, type Parts } from "../control/parts.ts";
import { clearOf, enterOf, type Motions } from "../motion/motions.ts";
import type { Interval, Problem, Section } from "../problem.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { asOneRun, type Run } from "./cut-runs.ts";

/** A train in a section under one kind of control. */
export interface Stay {
  readonly train: number;
  readonly section: number;
  /** When the section must be fed so; may be shortened where the same stock goes on (handOver). */
  readonly span: Interval;
  /**
   * What of it set-up and release are around: the train moves in the section, or stands in it between two moves.
   */
  readonly moving: Interval;
  /** When any of the train is in it, without set-up and release: more than once where it goes out and comes back. */
  readonly inside: readonly Interval[];
}

/** What it takes to say when a train is in its sections. */
export interface StayScene {
  readonly problem: Problem;
  readonly motions: Motions;
  readonly stock: StockPlan;
  readonly parts: Parts;
}

/**
 * The sections of a run and when each must be switched to its output: those that the train stands in when it begins
 * from then on, the others from setUp before the head enters; until release after the tail clears, or the run ends.
 * Never before its stock is there or after it has gone, so that stays overlap only where blocking times do. A
 * section changed over under the train is fed only while it is analog: an output and a digital supply never meet.
 * Two stays in one section that overlap or touch are one. Sections that nothing feeds are left out: a fault of the
 * path. In path order. Cost: entries of the run, squared where a section repeats.
 */
export function staysOfRun(scene: StayScene, run: Run): Stay[] {
  const stays: Stay[] = [];
  for (let entry = run.firstEntry; entry <= run.lastEntry; entry++) {
    const stay = stayInEntry(scene, run, entry);
    if ((scene.problem.sections[stay.section] as Section).control === "dead") continue;
    const at = stays.findLastIndex((before) => before.section === stay.section);
    const before = stays[at];
    if (before && stay.span.startMs <= before.span.endMs) stays[at] = join(before, stay);
    else stays.push(stay);
  }
  return stays;
}

function stayInEntry({ problem, motions, stock, parts }: StayScene, run: Run, entry: number): Stay {
  const { setUpMs, releaseMs } = problem.policy;
  const { train } = run;
  const section = motions.section[(motions.firstRow[train] as number) + entry] as number;
  const enter = entry <= run.standingThrough ? null : enterOf(motions, train, entry);
  const clear = clearOf(motions, train, entry);
  const thereMs = entry === 0 ? (stock.standFromMs[train] as number) : run.startMs;
  const from = Math.max(run.startMs, enter === null ? thereMs : enter - setUpMs);
  const to = Math.min(run.endMs, clear === null ? (stock.standToMs[train] as number) : clear + releaseMs);
  const since = entry === parts.firstEntry[run.part] ? (parts.sinceMs[run.part] as number) : from;
  const until = entry === parts.lastEntry[run.part] ? (parts.untilMs[run.part] as number) : to;
  return {
    train,
    section,
    span: { startMs: Math.max(from, since), endMs: Math.min(to, until) },
    moving: { startMs: enter ?? run.departMs, endMs: Math.min(clear ?? run.arriveMs, run.arriveMs) },
    inside: [{ startMs: enter ?? from, endMs: clear ?? to }],
  };
}

/**
 * Stays under digital control in sections that can be either: nothing is fed to them here, but no output may be
 * switched to the section meanwhile. Cost: linear in path entries.
 */
export function digitalStays(scene: StayScene): Stay[] {
  const { problem, motions, parts } = scene;
  const stays: Stay[] = [];
  for (let train = 0; train < motions.timed.length; train++) {
    const end = parts.firstPart[train + 1] as number;
    for (let part = parts.firstPart[train] as number; part < end; part++)
      if (parts.analog[part] === 0) stays.push(...staysOfRun(scene, untilChangedOver(scene, train, part)));
  }
  return stays.filter((stay) => (problem.sections[stay.section] as Section).control === "changeover");
}

/** A digital part as one run; its train stays digital until the section it stands in at an end is changed over. */
function untilChangedOver({ problem, parts }: StayScene, train: number, part: number): Run {
  const run = asOneRun(problem.policy, parts, train, part);
  const [sinceMs, untilMs] = [parts.sinceMs[part] as number, parts.untilMs[part] as number];
  return {
    ...run,
    startMs: sinceMs > -ALWAYS ? Math.min(run.startMs, sinceMs) : run.startMs,
    endMs: untilMs < ALWAYS ? Math.max(run.endMs, untilMs) : run.endMs,
  };
}

function join(a: Stay, b: Stay): Stay {
  const hull = (x: Interval, y: Interval) => ({
    startMs: Math.min(x.startMs, y.startMs),
    endMs: Math.max(x.endMs, y.endMs),
  });
  return {
    ...a,
    span: hull(a.span, b.span),
    moving: hull(a.moving, b.moving),
    inside: [...a.inside, ...b.inside],
  };
}
