import type { Database } from "../client.ts";

/**
 * What records refer to. A timetable version is known by its timetable's code, a blank and its number; a slot by its
 * session's code, a blank and its own.
 */
export type ReferredKind =
  | "area"
  | "place"
  | "section"
  | "commandSystem"
  | "supply"
  | "district"
  | "output"
  | "locomotive"
  | "rake"
  | "timetableVersion"
  | "session"
  | "slot";

export const versionCode = (timetable: string, number: number) => `${timetable} ${number}`;

export const slotCode = (session: string, slot: string) => `${session} ${slot}`;

type Reader = (database: Database, where: Where) => Promise<{ code: string }[]>;

interface Where {
  readonly clubId: string;
  readonly code?: { readonly in: string[] };
}

const onlyCode = { select: { code: true } } as const;

const READERS = {
  area: (database, where) => database.area.findMany({ where, ...onlyCode }),
  place: (database, where) => database.place.findMany({ where, ...onlyCode }),
  section: (database, where) => database.section.findMany({ where, ...onlyCode }),
  commandSystem: (database, where) => database.commandSystem.findMany({ where, ...onlyCode }),
  supply: (database, where) => database.supply.findMany({ where, ...onlyCode }),
  district: (database, where) => database.district.findMany({ where, ...onlyCode }),
  output: (database, where) => database.controllerOutput.findMany({ where, ...onlyCode }),
  locomotive: (database, where) => database.locomotive.findMany({ where, ...onlyCode }),
  rake: (database, where) => database.rake.findMany({ where, ...onlyCode }),
  session: (database, where) => database.session.findMany({ where, ...onlyCode }),
  slot: async (database, { clubId }) => {
    const slots = await database.slot.findMany({
      where: { clubId },
      select: { sessionCode: true, code: true },
    });
    return slots.map(({ sessionCode, code }) => ({ code: slotCode(sessionCode, code) }));
  },
  timetableVersion: async (database, { clubId }) => {
    const versions = await database.timetableVersion.findMany({
      where: { clubId },
      select: { timetableCode: true, number: true },
    });
    return versions.map(({ timetableCode, number }) => ({ code: versionCode(timetableCode, number) }));
  },
} as const satisfies Record<ReferredKind, Reader>;

/** The codes a club has of one kind; of those `among` only, where given. */
export async function readKnownCodes(
  database: Database,
  clubId: string,
  kind: ReferredKind,
  among?: readonly string[],
): Promise<Set<string>> {
  const reader: Reader = READERS[kind];
  const rows = await reader(database, { clubId, ...(among && { code: { in: [...among] } }) });
  return new Set(rows.map((row) => row.code));
}
