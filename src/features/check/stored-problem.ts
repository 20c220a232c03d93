import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Problem } from "../../planner/problem.ts";
import { misfit } from "./errors.ts";
import { toProblem } from "./mapper.ts";
import { toStoredSource } from "./service.ts";

/**
 * A stored slot as the planner takes it, for other features that ask the planner about it.
 * @throws Refusal unprocessable with every place where the plan does not fit together
 */
export function toStoredProblem(parts: PlanParts): Problem {
  const prepared = toProblem(toStoredSource(parts));
  if (prepared.ok) return prepared.plan.problem;
  throw misfit(prepared.faults, false);
}
