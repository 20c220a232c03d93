import type { TimetableDocument } from "../../../shared/documents.ts";
import type { Database } from "../client.ts";
import { readBodies } from "./read-records.ts";
import { type ClubScope, clubScope } from "./record-table.ts";
import { timetableTable, toVersionBody, trainScope, trainTable } from "./timetables.ts";

/** All timetables of a club with their versions and trains, in the order of codes and numbers. */
export async function readTimetables(database: Database, club: ClubScope): Promise<TimetableDocument[]> {
  const timetables = await readBodies(database, timetableTable, clubScope(club));
  const versions = await database.timetableVersion.findMany({
    where: { clubId: club.id },
    orderBy: { number: "asc" },
  });
  const documents: TimetableDocument[] = timetables.map((timetable) => ({ ...timetable, versions: [] }));
  const byCode = new Map(documents.map((document) => [document.code, document]));
  for (const version of versions) {
    const trains = await readBodies(database, trainTable, trainScope(club, version.id));
    byCode.get(version.timetableCode)?.versions.push({ ...toVersionBody(version), trains });
  }
  return documents;
}
