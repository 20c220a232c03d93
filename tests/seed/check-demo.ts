import { demoClub, demoDocument } from "../../seed/index.ts";
import { toTrain, type Working } from "../../seed/timetable/working.ts";
import type { CheckReport } from "../../shared/check.ts";
import { type ClubDocument, type PlanDocument, planDocument } from "../../shared/documents.ts";
import { parseLayoutTime, toLayoutTimeText } from "../../shared/layout-time.ts";
import type { Session, Slot } from "../../shared/sessions.ts";
import { createCheckService } from "../../src/features/check/service.ts";

const checks = createCheckService({ readSlot: () => Promise.reject(new Error("nothing is stored here")) });

/** The demo's document, of which no part is missing. */
export const demo = demoDocument as { [Part in keyof ClubDocument]-?: NonNullable<ClubDocument[Part]> };

/** Every slot of every demo night. */
export const demoSlots = demo.sessions.flatMap((session) =>
  session.slots.map((slot) => ({ session, slot, title: `${session.name}, ${slot.name}` })),
);

/** The check of a demo slot, as posted whole. */
export function checkSlot(session: string, slot: string): CheckReport {
  return checks.checkPlan(planOf(session, slot));
}

/** The check of a demo slot with other trains than the timetable's. */
export function checkSlotWith(session: string, slot: string, workings: readonly Working[]): CheckReport {
  const trains = workings.map(toTrain);
  return checks.checkPlan(planDocument.parse({ ...planOf(session, slot), trains }));
}

export function planOf(sessionCode: string, slotCode: string): PlanDocument {
  const found = demoSlots.find(({ session, slot }) => session.code === sessionCode && slot.code === slotCode);
  if (found === undefined) throw new Error(`no demo slot ${sessionCode}/${slotCode}`);
  const { session, slot } = found;
  const { layout, roster, handsets, timetables } = demo;
  const versions = timetables.find(({ code }) => code === slot.timetable)?.versions;
  const trains = versions?.find(({ number }) => number === slot.timetableVersion)?.trains;
  return planDocument.parse({
    scale: demoClub.scale,
    policy: session.policy ?? demoClub.policy,
    layout,
    roster,
    handsets,
    trains,
    slot: {
      layoutStart: slot.layoutStart,
      layoutEnd: layoutEnd(session, slot),
      clockRatio: session.clockRatio,
      areas: session.areas,
    },
  });
}

/** Both ends of a demo slot are on one side of any clock change, so their difference is real time. */
function layoutEnd({ clockRatio }: Session, slot: Slot): string {
  const realSeconds = (Date.parse(`${slot.endsAt}Z`) - Date.parse(`${slot.startsAt}Z`)) / 1_000;
  return toLayoutTimeText(parseLayoutTime(slot.layoutStart) + realSeconds * clockRatio);
}
