import type { CheckReport } from "../../../shared/check.ts";
import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Problem } from "../../planner/problem.ts";
import { noSchedule } from "./errors.ts";
import { type Clocks, toSelectorSchedule } from "./mapper.ts";
import { planPanel } from "./plan-panel.ts";
import { toSheet } from "./sheet.ts";
import type { SelectorStore, SlotAddress } from "./store.ts";

export interface SelectorDeps {
  /**
   * A slot that was read, as the planner takes it.
   * @throws Refusal unprocessable
   */
  readonly toProblem: (parts: PlanParts) => Problem;
  readonly toClock: (parts: PlanParts) => Clocks;
  /** The check of a slot that was read, for its words on what stops it. */
  readonly checkParts: (parts: PlanParts) => CheckReport;
  /** Rows of cells as CSV. */
  readonly writeSheet: (rows: readonly (readonly string[])[]) => string;
}

export type SelectorService = ReturnType<typeof createSelectorService>;

export function createSelectorService(store: SelectorStore, deps: SelectorDeps) {
  return {
    /**
     * When to turn which selector of the analog panel in a stored slot.
     * @throws Refusal not-found, unprocessable
     */
    make,

    /**
     * The same as a sheet, one row a turn.
     * @throws Refusal not-found, unprocessable where there is no schedule
     */
    async makeSheet(address: SlotAddress): Promise<string> {
      const schedule = await make(address);
      if (schedule.status !== "made") throw noSchedule(schedule.headline);
      return deps.writeSheet(toSheet(schedule, await store.readTimeZone(address.club)));
    },
  };

  async function make(address: SlotAddress): Promise<SelectorSchedule> {
    const parts = await store.readSlot(address);
    const problem = deps.toProblem(parts);
    const plan = planPanel(problem, () => deps.checkParts(parts));
    return toSelectorSchedule(plan, { parts, problem, clocks: deps.toClock(parts) });
  }
}
