import type { CheckReport } from "../../../shared/check.ts";
import type { PlanDocument } from "../../../shared/documents.ts";
import { LIMITS } from "../../../shared/limits.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import { check } from "../../planner/check.ts";
import { misfit, tooLongPaths } from "./errors.ts";
import { toPlanSource, toProblem } from "./mapper.ts";
import type { PlanSource } from "./plan-source.ts";
import { toCheckReport } from "./report.ts";
import type { CheckStore, SlotAddress } from "./store.ts";

export interface CheckService {
  /**
   * Checks a whole plan; nothing is stored.
   * @throws Refusal unprocessable with every place where the plan does not fit together
   */
  checkPlan(document: PlanDocument): CheckReport;
  /**
   * Checks a stored slot as it is now.
   * @throws Refusal not-found, unprocessable
   */
  checkSlot(address: SlotAddress): Promise<CheckReport>;
}

export function createCheckService(store: CheckStore): CheckService {
  return {
    checkPlan: (document) => checkSource(toPlanSource(document), true),
    checkSlot: async (address) => checkParts(await store.readSlot(address)),
  };
}

/**
 * The check of a slot that was read.
 * @throws Refusal unprocessable, too-many-trains
 */
export const checkParts = (parts: PlanParts): CheckReport => checkSource(toStoredSource(parts), false);

function checkSource(source: PlanSource, inBody: boolean): CheckReport {
  const entries = source.trains.reduce((sum, { path }) => sum + path.length, 0);
  if (entries > LIMITS.checkedPathEntries) throw tooLongPaths(entries);
  const prepared = toProblem(source);
  if (!prepared.ok) throw misfit(prepared.faults, inBody);
  return toCheckReport(prepared.plan, check(prepared.plan.problem));
}

/**
 * A stored slot's times count from the start of its session. Whoever had a train that the slot runs no more, a cancelled
 * night's for example, has it no more.
 */
export function toStoredSource({ slot, otherSlots, crew, ...parts }: PlanParts): PlanSource {
  const start = slot.sessionStartsAt.getTime();
  const run = new Set(parts.trains.map(({ code }) => code));
  return {
    ...parts,
    crew: { ...crew, turns: crew.turns.filter(({ train }) => run.has(train)) },
    areas: slot.areas,
    otherSlots: otherSlots.map(({ startsAt, endsAt, ...rest }) => ({
      ...rest,
      lengthMs: endsAt.getTime() - startsAt.getTime(),
    })),
    frame: {
      startMs: slot.startsAt.getTime() - start,
      endMs: slot.endsAt.getTime() - start,
      layoutStartSeconds: slot.layoutStartSeconds,
      clockRatio: slot.clockRatio,
      sessionStart: slot.sessionStartsAt,
    },
  };
}
