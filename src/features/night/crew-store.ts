import type { BookingState } from "../../../shared/booking.ts";
import type { Database } from "../../database/client.ts";
import type { Transaction } from "../../database/transaction.ts";

/** Who drives a train, and with what. */
export interface DriverOfTrain {
  readonly slot: string;
  readonly train: string;
  readonly member: string;
  readonly handset: string | null;
}

export interface Crew {
  readonly drivers: readonly DriverOfTrain[];
  /** Codes of all who have a train or a duty, or said that they come; some twice. */
  readonly expected: readonly string[];
}

const BEFORE_ANYTHING = "draft" satisfies BookingState;

/** How far the night's booking has come. */
export async function readBooking(database: Database, sessionId: string): Promise<BookingState> {
  const found = await database.booking.findFirst({ where: { sessionId }, select: { state: true } });
  return (found?.state ?? BEFORE_ANYTHING) as BookingState;
}

/** The same, and it stays so until the transaction ends. */
export async function holdBooking(transaction: Transaction, sessionId: string): Promise<BookingState> {
  const [found] = await transaction.$queryRaw<{ state: BookingState }[]>`
    select state from bookings where session_id = ${sessionId}::uuid for share`;
  return found?.state ?? BEFORE_ANYTHING;
}

export async function readCrew(database: Database, sessionId: string): Promise<Crew> {
  const claims = await database.claim.findMany({
    where: { sessionId },
    orderBy: { id: "asc" },
    select: { slotCode: true, memberCode: true, handsetCode: true, train: { select: { code: true } } },
  });
  const attending = await database.bookingAttendee.findMany({
    where: { sessionId },
    select: { memberCode: true },
  });
  return {
    drivers: claims.flatMap(({ slotCode, memberCode, handsetCode, train }) =>
      train === null ? [] : [{ slot: slotCode, train: train.code, member: memberCode, handset: handsetCode }],
    ),
    expected: [...claims, ...attending].map(({ memberCode }) => memberCode),
  };
}

/** Moves the booking of a locked night, held before, to running. */
export async function beginNight(transaction: Transaction, sessionId: string): Promise<void> {
  await transaction.booking.updateMany({
    where: { sessionId, state: "locked" satisfies BookingState },
    data: { state: "running" satisfies BookingState },
  });
}
