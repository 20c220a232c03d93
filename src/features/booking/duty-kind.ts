import { type Duty, duty } from "../../../shared/booking.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { findNight } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import { dutyScope, dutyTable } from "../../database/records/duties.ts";
import type { ClubScope, Scope } from "../../database/records/record-table.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import type { Destination } from "../../records/collection.ts";
import type { Flaw } from "../../records/flaws.ts";
import { reachClub } from "../../records/reach-club.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { ENDS_BEFORE_START, noSlot, OUTSIDE_SLOT } from "./errors.ts";

export const dutyKind: RecordKind<Duty> = {
  one: "duty",
  many: "duties",
  about:
    "A standing duty of a slot, such as a signal box, a yard or the marshal's desk: members claim it as they claim trains.",
  schema: duty,
  example: { code: "box", name: "Junction box", kind: "signalling", place: "mid", requires: ["panel"] },
  table: dutyTable,
  keep: "book",
  most: LIMITS.dutiesPerSlot,
  references: ({ place }) => (place === null ? [] : [{ to: "place", code: place, path: ["place"] }]),
  flaws: findHourFlaws,
  inspect: findStrayHours,
};

function findHourFlaws(body: Duty, { timeZone }: ClubScope): Flaw[] {
  const read = (["startsAt", "endsAt"] as const).map((field) => {
    const text = body[field];
    return { field, time: text === null ? null : readWallTime(text, timeZone) };
  });
  const flaws = read.flatMap(({ field, time }) =>
    time !== null && "fault" in time ? [{ path: [field], detail: time.fault }] : [],
  );
  const [start, end] = read.map(({ time }) => (time !== null && "instant" in time ? time.instant : null));
  if (start && end && end <= start) flaws.push({ path: ["endsAt"], detail: ENDS_BEFORE_START });
  return flaws;
}

/** Times of its own lie within the slot. */
async function findStrayHours(database: Database, { club, columns }: Scope, body: Duty): Promise<Flaw[]> {
  const { sessionId = "", slotCode = "" } = columns;
  const slot = await database.slot.findUnique({
    where: { sessionId_code: { sessionId, code: slotCode } },
    select: { startsAt: true, endsAt: true },
  });
  return (["startsAt", "endsAt"] as const).flatMap((field) => {
    const text = body[field];
    const time = text === null ? null : readWallTime(text, club.timeZone);
    if (slot === null || time === null || "fault" in time) return [];
    return time.instant < slot.startsAt || time.instant > slot.endsAt
      ? [{ path: [field], detail: OUTSIDE_SLOT }]
      : [];
  });
}

/** @throws Refusal not-found */
export async function reachDuties(
  database: Database,
  clubCode: string,
  session: string,
  slot: string,
): Promise<Destination> {
  const club = await reachClub(database, clubCode);
  const night = await findNight(database, club, session);
  const found =
    night &&
    (await database.slot.findUnique({
      where: { sessionId_code: { sessionId: night.id, code: slot } },
      select: { code: true },
    }));
  if (!night || !found) throw noSlot(session, slot);
  return { scope: dutyScope(club, night.id, slot) };
}
