import type * as rows from "../../database/generated/client.ts";
import type { PlanSlotInfo } from "../../database/records/read-plan.ts";
import type { Replaced } from "../../planner/measured/as-run.ts";
import { type ClockChange, layoutTimeAt } from "../../planner/night/layout-clock.ts";
import type { Problem } from "../../planner/problem.ts";

/** What a night's log has of a slot: locomotives that failed, and what was done to its clock, in order of time. */
export interface SlotLog {
  readonly replacements: readonly rows.NightReplacement[];
  readonly clock: readonly rows.NightClockChange[];
}

/**
 * Replacements as the planner takes them. When each was made goes by the layout clock, as readings do; where nobody ran
 * it, by the plan's. `toMs` brings layout seconds to ms since the session's start.
 */
export function toReplaced(
  { replacements, clock }: SlotLog,
  problem: Problem,
  slot: PlanSlotInfo,
  toMs: (layoutSeconds: number) => number,
): Replaced[] {
  const trains = new Map(problem.trains.map(({ code }, at) => [code, at]));
  const locomotives = new Map(problem.locomotives.map(({ code }, at) => [code, at]));
  const changes = clock.map(toChange);
  const face = { layoutStartMs: slot.layoutStartSeconds * 1_000, ratio: slot.clockRatio };
  return replacements.map(({ trainCode, locomotiveCode, replacementCode, at }) => ({
    train: trains.get(trainCode) ?? -1,
    locomotive: locomotives.get(locomotiveCode) ?? -1,
    by: locomotives.get(replacementCode ?? "") ?? -1,
    atMs:
      changes.length === 0
        ? at.getTime() - slot.sessionStartsAt.getTime()
        : toMs(layoutTimeAt(changes, face, at.getTime()).layoutMs / 1_000),
  }));
}

function toChange({ run, at, layoutS }: rows.NightClockChange): ClockChange {
  const atMs = at.getTime();
  if (layoutS !== null) return { run: "set", atMs, layoutMs: layoutS * 1_000 };
  return { run: run === "start" ? "start" : "pause", atMs };
}
