import type { Database } from "../../database/client.ts";

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
