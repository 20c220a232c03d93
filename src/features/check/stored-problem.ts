import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Problem } from "../../planner/problem.ts";
import { toInstantText, toLayoutText, toRealMs } from "./clock.ts";
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

/** Both clocks of a stored slot, for ms since the session's start. */
export interface StoredClock {
  /** What the layout clock shows. */
  layout(ms: number): string;
  /** The instant, RFC 3339 in UTC. */
  instant(ms: number): string | null;
  /** When the layout clock shows so many seconds since the timetable's midnight. */
  ms(layoutSeconds: number): number;
}

export function toStoredClock(parts: PlanParts): StoredClock {
  const { frame } = toStoredSource(parts);
  return {
    layout: (ms) => toLayoutText(frame, ms),
    instant: (ms) => toInstantText(frame, ms),
    ms: (layoutSeconds) => toRealMs(frame, layoutSeconds),
  };
}
