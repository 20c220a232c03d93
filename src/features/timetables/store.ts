import type { NewTimetableVersion, TimetableVersion, Train } from "../../../shared/timetable.ts";
import type { Database } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import { readBodies } from "../../database/records/read-records.ts";
import type { ClubScope, Stored } from "../../database/records/record-table.ts";
import { toVersionBody, trainScope, trainTable } from "../../database/records/timetables.ts";
import { writeRecords } from "../../database/records/write-records.ts";
import type { Transaction } from "../../database/transaction.ts";

/** A timetable of a club. */
export interface TimetableAddress {
  readonly club: ClubScope;
  readonly timetable: string;
}

const toStored = (row: rows.TimetableVersion): Stored<TimetableVersion> => ({
  id: row.id,
  body: toVersionBody(row),
  version: row.version,
  updatedAt: row.updatedAt,
});

const whereNumber = ({ club, timetable }: TimetableAddress, number: number) => ({
  clubId_timetableCode_number: { clubId: club.id, timetableCode: timetable, number },
});

export async function hasTimetable(
  database: Database,
  { club, timetable }: TimetableAddress,
): Promise<boolean> {
  const where = { clubId_code: { clubId: club.id, code: timetable } };
  return (await database.timetable.findUnique({ where, select: { id: true } })) !== null;
}

export async function readVersion(
  database: Database,
  address: TimetableAddress,
  number: number,
): Promise<Stored<TimetableVersion> | undefined> {
  const row = await database.timetableVersion.findUnique({ where: whereNumber(address, number) });
  return row === null ? undefined : toStored(row);
}

/** Versions after a number, in the order of their numbers. */
export async function readVersions(
  database: Database,
  { club, timetable }: TimetableAddress,
  after: number,
  limit: number,
): Promise<Stored<TimetableVersion>[]> {
  const found = await database.timetableVersion.findMany({
    where: { clubId: club.id, timetableCode: timetable, number: { gt: after } },
    orderBy: { number: "asc" },
    take: limit,
  });
  return found.map(toStored);
}

/** The version with the highest number. */
export async function readLastVersion(
  database: Database,
  { club, timetable }: TimetableAddress,
): Promise<Stored<TimetableVersion> | undefined> {
  const row = await database.timetableVersion.findFirst({
    where: { clubId: club.id, timetableCode: timetable },
    orderBy: { number: "desc" },
  });
  return row === null ? undefined : toStored(row);
}

/**
 * The version's state as it is now; whoever would issue it waits until the transaction ends. Undefined where the version
 * is gone.
 */
export async function holdState(database: Database, versionId: string): Promise<string | undefined> {
  const [row] = await database.$queryRaw<{ state: string }[]>`
    select state from timetable_versions where id = ${versionId}::uuid for share`;
  return row?.state;
}

/** The trains of a version. */
export const readTrains = (
  database: Database,
  { club }: TimetableAddress,
  { id }: Stored<TimetableVersion>,
): Promise<Train[]> => readBodies(database, trainTable, trainScope(club, id));

/** Makes a draft with copies of the trains. */
export async function insertVersion(
  transaction: Transaction,
  { club, timetable }: TimetableAddress,
  number: number,
  { note }: Pick<NewTimetableVersion, "note">,
  trains: readonly Train[],
): Promise<Stored<TimetableVersion>> {
  const row = await transaction.timetableVersion.create({
    data: { clubId: club.id, timetableCode: timetable, number, state: "draft", note },
  });
  await writeRecords(transaction, trainTable, trainScope(club, row.id), { made: trains, changed: [] });
  return toStored(row);
}

/** @returns undefined, with nothing changed, when it is no longer at that version or gone */
export async function updateVersion(
  transaction: Transaction,
  address: TimetableAddress,
  { id, version }: Stored<TimetableVersion>,
  { number, state, note }: TimetableVersion,
): Promise<Stored<TimetableVersion> | undefined> {
  const { count } = await transaction.timetableVersion.updateMany({
    where: { id, version },
    data: { number, state, note },
  });
  return count === 0 ? undefined : readVersion(transaction, address, number);
}
