import type { Duty, DutyKind } from "../../../shared/booking.ts";
import { toLocalText } from "../../lib/local-time.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { ClubScope, KeptColumn, RecordTable, Scope } from "./record-table.ts";

/** The duties of one slot of a session. */
export const dutyScope = (club: ClubScope, sessionId: string, slotCode: string): Scope => ({
  club,
  columns: { clubId: club.id, sessionId, slotCode },
});

/** For wall times that have been looked at before. */
function toInstant(text: string | null, { timeZone }: ClubScope): Date | null {
  if (text === null) return null;
  const read = readWallTime(text, timeZone);
  if ("fault" in read) throw new Error(read.fault);
  return read.instant;
}

const toText = (at: Date | null, { timeZone }: ClubScope) => (at === null ? null : toLocalText(at, timeZone));

export const dutyTable: RecordTable<Duty, rows.Duty> = {
  model: "duty",
  toColumns: (duty, { club }): Omit<Prisma.DutyCreateManyInput, KeptColumn | "sessionId" | "slotCode"> => ({
    name: duty.name,
    kind: duty.kind,
    placeCode: duty.place,
    startsAt: toInstant(duty.startsAt, club),
    endsAt: toInstant(duty.endsAt, club),
    requires: duty.requires,
    note: duty.note,
  }),
  toBody: (row, { club }) => ({
    code: row.code,
    name: row.name,
    kind: row.kind as DutyKind,
    place: row.placeCode,
    startsAt: toText(row.startsAt, club),
    endsAt: toText(row.endsAt, club),
    requires: row.requires,
    note: row.note,
  }),
};
