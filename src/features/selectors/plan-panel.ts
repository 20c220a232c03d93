import type { CheckReport } from "../../../shared/check.ts";
import { planAnalog } from "../../planner/analog/plan-analog.ts";
import { compilePlan } from "../../planner/compile-plan.ts";
import type { Problem } from "../../planner/problem.ts";
import type { AnalogReport } from "../../planner/result.ts";
import { makeSchedule } from "../../planner/selectors/make-schedule.ts";
import type { SelectorSchedule } from "../../planner/selectors/schedule.ts";
import { judgeSchedule } from "../../planner/verify/judge-schedule.ts";

type Finding = CheckReport["findings"][number];

/** A schedule that its judge has passed, or why there is none. */
export type PanelPlan =
  | { readonly status: "made"; readonly schedule: SelectorSchedule; readonly turns: Turns }
  | { readonly status: "no-analog" }
  | {
      readonly status: "no-assignment" | "not-decided" | "plan-stopped";
      readonly reasons: readonly Finding[];
    };

type Turns = NonNullable<AnalogReport["turns"]>;

/** Findings about outputs that there are too few of. */
const OF_OUTPUTS = /^outputs?-(too-few|none-reaches|not-decided)$/;
/** Findings that want of the track what no panel can give. */
const OF_TRACK = /^(path|section|stock|train|analog|decoder|return|output|controller)/;

/**
 * The schedule of a slot. None is shown that its judge does not pass: where the plan itself is at fault these faults are
 * the answer, and else it is a bug.
 */
export function planPanel(problem: Problem, check: () => CheckReport): PanelPlan {
  const plan = compilePlan(problem);
  const { report } = planAnalog(problem, plan.motions, plan.stock, plan.parts);
  if (report.runs.length === 0) return { status: "no-analog" };
  const stopping = (kind: RegExp) =>
    check().findings.filter(({ code, severity }) => severity === "stops" && kind.test(code));
  const answer = makeSchedule(plan, report);
  if (answer.status === "not-served") {
    const status = report.status === "not-decided" ? "not-decided" : "no-assignment";
    return { status, reasons: stopping(OF_OUTPUTS) };
  }
  if (answer.status === "made" && report.turns !== null) {
    const faults = judgeSchedule(problem, answer.schedule.turns);
    if (faults.length === 0) return { status: "made", schedule: answer.schedule, turns: report.turns };
  }
  const reasons = stopping(OF_TRACK);
  if (reasons.length === 0)
    throw new Error("a selector schedule did not pass its judge in a plan without fault");
  return { status: "plan-stopped", reasons };
}
