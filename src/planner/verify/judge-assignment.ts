import type { Interval, Problem, Section } from "../problem.ts";
import type { AnalogReport, AnalogRun } from "../result.ts";
import type { Covered, Move } from "./covered-sections.ts";
import { ridesOf } from "./rides.ts";

/** What is wrong with an assignment. Runs by position in the report. */
export type AssignmentFault =
  | { readonly kind: "output-does-not-reach"; readonly run: number; readonly section: number }
  | { readonly kind: "output-in-digital-section"; readonly run: number; readonly section: number }
  | { readonly kind: "two-trains-on-output"; readonly runs: readonly [number, number] }
  | {
      readonly kind: "two-outputs-in-section";
      readonly runs: readonly [number, number];
      readonly section: number;
    }
  | {
      readonly kind: "moves-unfed";
      readonly train: number;
      readonly section: number;
      readonly span: Interval;
    };

/** Instants are whole ms, the moves judged against them are not. */
const ROUNDING_MS = 1;

/**
 * Judges an assignment of outputs from first principles: each output reaches what it feeds, feeds nothing digital
 * and drives one train at a time; each section has one output at a time; and a moving train has one and the same
 * output in every analog section it covers, all the way from one stand at which it may change to the next. Shares
 * nothing with what made the assignment. Runs without an output, and so the moves of their trains, are not
 * judged. Where two trains clash in a section, so do their outputs: that is in the plan, not in the assignment.
 * Empty: nothing wrong. Cost: square in runs.
 */
export function judgeAssignment(problem: Problem, report: AnalogReport): AssignmentFault[] {
  const faults: AssignmentFault[] = [];
  for (const [at, run] of report.runs.entries()) {
    if (run.output < 0) continue;
    faults.push(...misfed(problem, run, at));
    for (let other = at + 1; other < report.runs.length; other++)
      faults.push(...inEachOthersWay(report, at, other));
  }
  const served = problem.trains.map((_, train) =>
    report.runs.every((run) => run.train !== train || run.output >= 0),
  );
  for (let train = 0; train < problem.trains.length; train++)
    if (served[train])
      for (const ride of ridesOf(problem, train)) faults.push(...unfed(problem, report, train, ride));
  return faults;
}

function misfed(problem: Problem, run: AnalogRun, at: number): AssignmentFault[] {
  return run.sections.flatMap((section): AssignmentFault[] => {
    const { outputs, control } = problem.sections[section] as Section;
    if (!outputs.includes(run.output)) return [{ kind: "output-does-not-reach", run: at, section }];
    if (control === "digital" || control === "dead")
      return [{ kind: "output-in-digital-section", run: at, section }];
    return [];
  });
}

function inEachOthersWay(report: AnalogReport, first: number, second: number): AssignmentFault[] {
  const a = report.runs[first] as AnalogRun;
  const b = report.runs[second] as AnalogRun;
  if (b.output < 0) return [];
  const runs = [first, second] as const;
  if (a.output === b.output)
    return a.train !== b.train && overlap(a.span, b.span) ? [{ kind: "two-trains-on-output", runs }] : [];
  const sections = a.sections.filter((section, i) =>
    b.sections.some(
      (other, j) =>
        other === section && overlap(a.sectionSpans[i] as Interval, b.sectionSpans[j] as Interval),
    ),
  );
  return [...new Set(sections)].map((section) => ({ kind: "two-outputs-in-section", runs, section }));
}

function unfed(
  problem: Problem,
  report: AnalogReport,
  train: number,
  ride: readonly Move[],
): AssignmentFault[] {
  const needs = ride
    .flatMap((move) => move.covered)
    .filter(({ section }) => (problem.sections[section] as Section).control !== "dead");
  const mine = report.runs.filter((run) => run.train === train);
  if (mine.some((run) => needs.every((need) => feeds(run, need)))) return [];
  const first = needs.find((need) => !mine.some((run) => feeds(run, need))) ?? needs[0];
  if (!first) return [];
  const span = { startMs: Math.floor(first.fromMs), endMs: Math.ceil(first.toMs) };
  return [{ kind: "moves-unfed", train, section: first.section, span }];
}

function feeds(run: AnalogRun, { section, fromMs, toMs }: Covered): boolean {
  return run.sections.some((fed, i) => {
    const span = run.sectionSpans[i] as Interval;
    return fed === section && span.startMs <= fromMs + ROUNDING_MS && span.endMs >= toMs - ROUNDING_MS;
  });
}

/** An empty span overlaps nothing. */
function overlap(a: Interval, b: Interval): boolean {
  return Math.max(a.startMs, b.startMs) < Math.min(a.endMs, b.endMs);
}
