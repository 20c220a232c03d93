import type { BookingBody, BookingState } from "../../../shared/booking.ts";
import { type BookedNight, type BookingNow, readBooking } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import type { Transaction } from "../../database/transaction.ts";

export async function readAttending(database: Database, sessionId: string): Promise<string[]> {
  const found = await database.bookingAttendee.findMany({
    where: { sessionId },
    select: { memberCode: true },
    orderBy: { memberCode: "asc" },
  });
  return found.map(({ memberCode }) => memberCode);
}

/** Those of the codes that the club has no member of. */
export async function findStrangers(
  database: Database,
  { club }: BookedNight,
  codes: readonly string[],
): Promise<string[]> {
  const known = await database.member.findMany({
    where: { clubId: club.id, code: { in: [...codes] } },
    select: { code: true },
  });
  const has = new Set(known.map(({ code }) => code));
  return codes.filter((code) => !has.has(code));
}

export interface Figures {
  readonly pickUpMs: number;
  readonly handInMs: number;
}

/** The session's own policy, or the club's. */
export async function readFigures(database: Database, { id, club }: BookedNight): Promise<Figures> {
  const own = await database.session.findUniqueOrThrow({
    where: { id },
    select: { pickUpMs: true, handInMs: true },
  });
  const { pickUpMs, handInMs } = own;
  if (pickUpMs !== null && handInMs !== null) return { pickUpMs, handInMs };
  return database.club.findUniqueOrThrow({
    where: { id: club.id },
    select: { pickUpMs: true, handInMs: true },
  });
}

/** Writes the columns named, making the row where there is none. The night must be held. */
export async function writeBooking(
  transaction: Transaction,
  { id, club }: BookedNight,
  data: Partial<Omit<BookingNow, "version">>,
): Promise<BookingNow> {
  const { count } = await transaction.booking.updateMany({ where: { sessionId: id }, data });
  if (count === 0)
    await transaction.booking.create({ data: { clubId: club.id, sessionId: id, state: "draft", ...data } });
  return readBooking(transaction, id);
}

export async function writeAttending(
  transaction: Transaction,
  { id, club }: BookedNight,
  { attending }: Pick<BookingBody, "attending">,
): Promise<void> {
  await transaction.bookingAttendee.deleteMany({
    where: { sessionId: id, memberCode: { notIn: attending } },
  });
  await transaction.bookingAttendee.createMany({
    data: attending.map((memberCode) => ({ clubId: club.id, sessionId: id, memberCode })),
    skipDuplicates: true,
  });
}

/** @returns whether anything changed */
export async function writeComing(
  transaction: Transaction,
  { id, club }: BookedNight,
  memberCode: string,
  coming: boolean,
): Promise<boolean> {
  const { count } = coming
    ? await transaction.bookingAttendee.createMany({
        data: [{ clubId: club.id, sessionId: id, memberCode }],
        skipDuplicates: true,
      })
    : await transaction.bookingAttendee.deleteMany({ where: { sessionId: id, memberCode } });
  return count > 0;
}

export const countClaims = (database: Database, sessionId: string): Promise<number> =>
  database.claim.count({ where: { sessionId } });

/** A night that is not to be any more, or not yet, has nobody waiting; a draft has no claims either. */
export async function clearNight(
  transaction: Transaction,
  sessionId: string,
  to: BookingState,
): Promise<void> {
  await transaction.swap.deleteMany({ where: { sessionId } });
  await transaction.queuePlace.deleteMany({ where: { sessionId } });
  if (to === "draft") await transaction.claim.deleteMany({ where: { sessionId } });
}

export interface NightOfList {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly state: BookingState;
}

/** Sessions with a slot that ends after `from` and one that starts before `to`. */
export async function listNights(
  database: Database,
  clubId: string,
  { from, to }: { readonly from: Date | undefined; readonly to: Date | undefined },
): Promise<NightOfList[]> {
  const found = await database.session.findMany({
    where: {
      clubId,
      AND: [
        from === undefined ? {} : { slots: { some: { endsAt: { gt: from } } } },
        to === undefined ? {} : { slots: { some: { startsAt: { lt: to } } } },
      ],
    },
    select: { id: true, code: true, name: true, booking: { select: { state: true } } },
    orderBy: { code: "asc" },
  });
  return found.map(({ booking, ...night }) => ({
    ...night,
    state: (booking?.state ?? "draft") as BookingState,
  }));
}
