import type { Problem, Section } from "../problem.ts";
import type { AnalogReport, AnalogRun } from "../result.ts";

/** `proven`: no assignment serves the core, and one serves it without any one of its runs. */
export type CoreVerdict = "proven" | "servable" | "one-to-spare" | "not-judged";

/**
 * Judges the proof that outputs do not suffice: more runs that exclude each other than outputs that any of them
 * could have, or else by trying every assignment of its runs; and every one without each of them. Shares nothing
 * with what found it. Cost: outputs to the power of runs at worst; after `mostSteps` tries of an output for a run
 * it gives up as `not-judged`.
 */
export function judgeCore(problem: Problem, report: AnalogReport, mostSteps: number): CoreVerdict {
  const core = report.core.map((at) => report.runs[at] as AnalogRun);
  const budget = { left: mostSteps };
  const whole = !isCrowd(problem, core) && canServe(problem, core, budget);
  const each = core.map((left) =>
    canServe(
      problem,
      core.filter((run) => run !== left),
      budget,
    ),
  );
  if (whole) return "servable";
  if (budget.left < 0) return "not-judged";
  return each.every(Boolean) ? "proven" : "one-to-spare";
}

/** Whether some choice of an output for each run leaves no two trains on one output at one time. */
function canServe(problem: Problem, runs: readonly AnalogRun[], budget: { left: number }): boolean {
  const chosen: number[] = [];
  const place = (at: number): boolean => {
    const run = runs[at];
    if (!run) return true;
    for (let output = 0; output < problem.outputs.length; output++) {
      if (--budget.left < 0) return false;
      if (!reaches(problem, run, output) || isTaken(runs, chosen, run, output)) continue;
      chosen[at] = output;
      if (place(at + 1)) return true;
      chosen.length = at;
    }
    return false;
  };
  return place(0);
}

/** Whether all exclude each other and are more than the outputs that reach any of them (pigeonholes). */
function isCrowd(problem: Problem, runs: readonly AnalogRun[]): boolean {
  const outputs = problem.outputs.filter((_, output) => runs.some((run) => reaches(problem, run, output)));
  return outputs.length < runs.length && runs.every((a) => runs.every((b) => a === b || excludes(a, b)));
}

function excludes(a: AnalogRun, b: AnalogRun): boolean {
  return a.train !== b.train && a.span.startMs < b.span.endMs && b.span.startMs < a.span.endMs;
}

function reaches(problem: Problem, run: AnalogRun, output: number): boolean {
  return run.sections.every((section) => (problem.sections[section] as Section).outputs.includes(output));
}

function isTaken(
  runs: readonly AnalogRun[],
  chosen: readonly number[],
  run: AnalogRun,
  output: number,
): boolean {
  return chosen.some((other, at) => other === output && excludes(runs[at] as AnalogRun, run));
}
