import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Session, Slot } from "../../../shared/sessions.ts";
import type { Control } from "../../../shared/vocabulary.ts";
import { toLocalText } from "../../lib/local-time.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import { hasPolicy, NO_POLICY, toPolicy, toPolicyColumns } from "./policy.ts";
import type { ClubScope, KeptColumn, RecordTable } from "./record-table.ts";

/** For wall times that have been looked at before: one that stands for no instant here is a mistake of ours. */
function toInstant(text: string, { timeZone }: ClubScope): Date {
  const read = readWallTime(text, timeZone);
  if ("fault" in read) throw new Error(read.fault);
  return read.instant;
}

const toSlot = (row: rows.Slot, { timeZone }: ClubScope): Slot => ({
  code: row.code,
  name: row.name,
  startsAt: toLocalText(row.startsAt, timeZone),
  endsAt: toLocalText(row.endsAt, timeZone),
  layoutStart: toLayoutTimeText(row.layoutStartS),
  timetable: row.timetableCode,
  timetableVersion: row.timetableVersion,
});

/**
 * Slots of a session that have another code in what becomes of it, as pairs of old and new: one that begins at the same
 * time is the same slot, for a club has one railway.
 */
export function renamedSlots(before: Session, after: Session): [string, string][] {
  const had = new Set(before.slots.map(({ code }) => code));
  const has = new Set(after.slots.map(({ code }) => code));
  return before.slots.flatMap(({ code, startsAt }): [string, string][] => {
    if (has.has(code)) return [];
    const same = after.slots.find((slot) => slot.startsAt === startsAt && !had.has(slot.code));
    return same ? [[code, same.code]] : [];
  });
}

type SessionRow = Prisma.SessionGetPayload<{ include: { areas: true; slots: true } }>;

export const sessionTable: RecordTable<Session, SessionRow> = {
  model: "session",
  toColumns: (session): Omit<Prisma.SessionCreateManyInput, KeptColumn> => ({
    name: session.name,
    clockRatio: session.clockRatio,
    ...(session.policy ? toPolicyColumns(session.policy) : NO_POLICY),
    note: session.note,
  }),
  toBody: (row, { club }) => ({
    code: row.code,
    name: row.name,
    clockRatio: row.clockRatio,
    areas: row.areas.map((area) => ({ area: area.areaCode, control: area.control as Control })),
    policy: hasPolicy(row) ? toPolicy(row) : null,
    slots: row.slots.map((slot) => toSlot(slot, club)),
    note: row.note,
  }),
  parts: [
    {
      field: "areas",
      model: "sessionArea",
      owner: "sessionId",
      toRows: (session): Omit<Prisma.SessionAreaCreateManyInput, "clubId" | "sessionId">[] =>
        session.areas.map(({ area, control }, position) => ({ position, areaCode: area, control })),
    },
    {
      field: "slots",
      model: "slot",
      owner: "sessionId",
      renamed: renamedSlots,
      toRows: (session, { club }): Omit<Prisma.SlotCreateManyInput, "clubId" | "sessionId">[] =>
        session.slots.map((slot, position) => ({
          position,
          sessionCode: session.code,
          code: slot.code,
          name: slot.name,
          startsAt: toInstant(slot.startsAt, club),
          endsAt: toInstant(slot.endsAt, club),
          layoutStartS: parseLayoutTime(slot.layoutStart),
          timetableCode: slot.timetable,
          timetableVersion: slot.timetableVersion,
        })),
    },
  ],
};
