import type { CheckReport } from "../../../shared/check.ts";
import type { NewTimetableVersion, TimetableVersion, Train } from "../../../shared/timetable.ts";
import type {
  Effect,
  EffectsAnswer,
  KeepAnswer,
  RecordChanges,
  TryAnswer,
  TryStep,
} from "../../../shared/what-if.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Clock } from "../../lib/clock.ts";
import { othersTurn } from "../../lib/others-turn.ts";
import { Refusal } from "../../lib/refusal.ts";
import { changeRecords } from "./change-records.ts";
import { compareReports } from "./compare.ts";
import { noLocomotive } from "./errors.ts";
import type { SlotAddress, WhatIfStore } from "./store.ts";
import { type Attempt, toEffect, toHeadline } from "./tell-effects.ts";
import { doSteps, type FindTrainFlaws, touched } from "./try-steps.ts";

/** Slots to come that one answer looks at: two months of weekly evenings with two crews. */
const MOST_SLOTS = 16;

export interface WhatIfDeps {
  readonly clock: Clock;
  /**
   * The check of a slot that was read.
   * @throws Refusal unprocessable, too-many-trains
   */
  readonly checkParts: (parts: PlanParts) => CheckReport;
  readonly findTrainFlaws: FindTrainFlaws;
  /** A draft with the trains of version `from` as `change` leaves them, all or nothing. They have no flaws. */
  readonly draftWith: (
    club: string,
    timetable: string,
    body: NewTimetableVersion & { readonly from: number },
    change: (trains: readonly Train[]) => readonly Train[],
  ) => Promise<TimetableVersion>;
}

export type WhatIfService = ReturnType<typeof createWhatIfService>;

export function createWhatIfService(
  store: WhatIfStore,
  { clock, checkParts, findTrainFlaws, draftWith }: WhatIfDeps,
) {
  return {
    /**
     * The slot with what is tried; nothing is stored.
     * @throws Refusal not-found, unprocessable
     */
    async try(address: SlotAddress, steps: readonly TryStep[]): Promise<TryAnswer> {
      const parts = await store.readSlot(address);
      refuseUnknownLocomotives(parts, steps);
      const report = checkParts({ ...parts, trains: doSteps(parts.trains, steps, findTrainFlaws) });
      return { report, ...compareReports(checkParts(parts), report), trains: touched(steps) };
    },

    /**
     * Keeps what was tried as a new draft of the slot's timetable; the slot goes on with the version it has.
     * @throws Refusal not-found, unprocessable
     */
    async keep(address: SlotAddress, steps: readonly TryStep[], note: string): Promise<KeepAnswer> {
      const parts = await store.readSlot(address);
      refuseUnknownLocomotives(parts, steps);
      const { timetable, timetableVersion: from } = parts.slot;
      const version = await draftWith(address.club, timetable, { from, note }, (trains) =>
        doSteps(trains, steps, findTrainFlaws),
      );
      return { timetable, version };
    },

    /**
     * What changes of the club's records do to its slots to come; nothing is stored.
     * @throws Refusal not-found
     */
    async effects(club: string, changes: RecordChanges): Promise<EffectsAnswer> {
      const { common, slots, leftOut } = await store.readComing(club, clock.now(), MOST_SLOTS);
      const changed = changeRecords(common, changes);
      const effects: Effect[] = [];
      for (const slot of slots) {
        const ownPolicy = slot.parts.policy !== common.policy;
        const after = { ...slot.parts, ...changed, policy: ownPolicy ? slot.parts.policy : changed.policy };
        const before = attempt(slot.parts);
        await othersTurn();
        effects.push(toEffect(slot, before, attempt(after)));
        await othersTurn();
      }
      return { headline: toHeadline(effects, leftOut), slots: effects, slotsLeftOut: leftOut };
    },
  };

  /** A plan that does not fit together is an answer here. */
  function attempt(parts: PlanParts): Attempt {
    try {
      return checkParts(parts);
    } catch (cause) {
      if (cause instanceof Refusal) return cause.message;
      throw cause;
    }
  }
}

function refuseUnknownLocomotives({ roster }: PlanParts, steps: readonly TryStep[]): void {
  const known = new Set(roster.locomotives.map(({ code }) => code));
  for (const [at, step] of steps.entries())
    if (step.do === "change-locomotive" && !known.has(step.to)) throw noLocomotive(at, step.to);
}
