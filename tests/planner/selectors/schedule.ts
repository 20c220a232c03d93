import { compilePlan } from "../../../src/planner/compile-plan.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import { makeSchedule } from "../../../src/planner/selectors/make-schedule.ts";
import type { SelectorSchedule } from "../../../src/planner/selectors/schedule.ts";
import { sweepPlan } from "../../../src/planner/sweep.ts";

/** The schedule of a plan that has one. */
export function scheduleOf(problem: Problem): SelectorSchedule {
  const plan = compilePlan(problem);
  const answer = makeSchedule(plan, sweepPlan(plan).analog.report);
  if (answer.status !== "made") throw new Error(`no schedule: ${answer.status}`);
  return answer.schedule;
}
