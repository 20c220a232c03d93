import { buildRuns } from "../analog/build-runs.ts";
import type { Plan } from "../compile-plan.ts";
import type { Interval, Problem } from "../problem.ts";
import type { AnalogReport, AnalogRun } from "../result.ts";
import { chooseMoments } from "./choose-moments.ts";
import type { Band, OpenTurn, ScheduleAnswer, SelectorTurn } from "./schedule.ts";
import { type SectionUse, sectionUses } from "./section-uses.ts";

/**
 * When to turn which selector of the analog panel, for the assignment of `report`; all stand off at the beginning. A
 * selector is turned only while nothing runs in its section: between the end of one use and the beginning of the
 * next that wants another position, and not at all where both want the same and nothing that must be off stands
 * there in between. Cost: sorting the uses of each section.
 */
export function makeSchedule(plan: Plan, report: AnalogReport): ScheduleAnswer {
  const { problem, motions, stock, parts } = plan;
  if (report.runs.some(({ output }) => output < 0)) return { status: "not-served" };
  const { uses, contradictions } = sectionUses(plan, buildRuns(problem, motions, stock, parts));
  if (contradictions.length > 0) return { status: "contradicted", contradictions };
  const open = [...uses.values()].flatMap((here) => turnsOf(problem, report.runs, here));
  const turns = chooseMoments(open);
  return { status: "made", schedule: { turns, bands: bandsOf(turns, endOf(problem, uses)) } };
}

/** The turns of one section. */
function turnsOf(problem: Problem, runs: readonly AnalogRun[], uses: readonly SectionUse[]): OpenTurn[] {
  const turns: OpenTurn[] = [];
  const positionOf = ({ run }: SectionUse) => (run < 0 ? -1 : (runs[run] as AnalogRun).output);
  for (const [at, use] of uses.entries()) {
    const before = uses[at - 1];
    const from = before ? positionOf(before) : -1;
    const to = positionOf(use);
    if (from === to) continue;
    const startMs = before ? before.span.endMs : Math.min(problem.slot.startMs, use.span.startMs);
    const strictMs = { startMs, endMs: use.span.startMs };
    turns.push({
      section: use.section,
      from,
      to,
      strictMs,
      mayMs: harmlessSpan(runs, strictMs, { before, use, from, to }),
      train: use.train,
      reason: use.run >= 0 ? "runs" : use.isDigital ? "digital" : "stands",
    });
  }
  return turns;
}

interface Change {
  readonly before: SectionUse | undefined;
  readonly use: SectionUse;
  readonly from: number;
  readonly to: number;
}

/**
 * Stock that stands on an output which drives nobody stands still: such a selector may be turned off until the output
 * is another train's, and on as soon as it is no longer.
 */
function harmlessSpan(runs: readonly AnalogRun[], strictMs: Interval, change: Change): Interval {
  const { before, use, from, to } = change;
  let { startMs, endMs } = strictMs;
  if (use.run < 0 && !use.isDigital && from >= 0) {
    const taken = runs.filter(({ output, span }) => output === from && span.startMs >= endMs);
    endMs = Math.min(use.span.endMs, ...taken.map(({ span }) => span.startMs));
  }
  if (before && before.run < 0 && !before.isDigital && to >= 0) {
    const given = runs.filter(({ output, span }) => output === to && span.endMs <= startMs);
    const others = runs.some(
      ({ output, span }) => output === to && span.startMs < startMs && span.endMs > startMs,
    );
    if (!others) startMs = Math.max(before.span.startMs, ...given.map(({ span }) => span.endMs));
  }
  return { startMs: Math.min(startMs, strictMs.startMs), endMs: Math.max(endMs, strictMs.endMs) };
}

/** Beyond the slot where a run is. */
function endOf({ slot }: Problem, uses: ReadonlyMap<number, readonly SectionUse[]>): number {
  let { endMs } = slot;
  for (const here of uses.values()) for (const { span } of here) endMs = Math.max(endMs, span.endMs);
  return endMs;
}

function bandsOf(turns: readonly SelectorTurn[], endMs: number): Band[] {
  const bySection = new Map<number, SelectorTurn[]>();
  for (const turn of turns) {
    const here = bySection.get(turn.section);
    if (here) here.push(turn);
    else bySection.set(turn.section, [turn]);
  }
  return [...bySection.entries()]
    .sort(([a], [b]) => a - b)
    .flatMap(([section, here]) =>
      here.flatMap(({ to, atMs }, at) => {
        const span = { startMs: atMs, endMs: here[at + 1]?.atMs ?? endMs };
        return to < 0 ? [] : [{ section, output: to, span }];
      }),
    );
}
