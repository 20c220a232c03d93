import type { Timetable, TimetableVersion, Train } from "../../../../shared/timetable.ts";
import type { Database } from "../../../database/client.ts";
import { readBodies, readRecord } from "../../../database/records/read-records.ts";
import { type ClubScope, clubScope } from "../../../database/records/record-table.ts";
import {
  timetableTable,
  toVersionBody,
  trainScope,
  trainTable,
} from "../../../database/records/timetables.ts";
import { noVersion } from "../errors.ts";

/** A timetable version with its trains, and the timetable around it. */
export interface VersionTrains {
  readonly timetable: Timetable;
  readonly version: TimetableVersion;
  readonly trains: readonly Train[];
}

/** @throws Refusal not-found */
export async function readVersionTrains(
  database: Database,
  club: ClubScope,
  code: string,
  number: number,
): Promise<VersionTrains> {
  const timetable = await readRecord(database, timetableTable, clubScope(club), code);
  const version = await database.timetableVersion.findUnique({
    where: { clubId_timetableCode_number: { clubId: club.id, timetableCode: code, number } },
  });
  if (timetable === undefined || version === null) throw noVersion(code, number);
  const trains = await readBodies(database, trainTable, trainScope(club, version.id));
  return { timetable: timetable.body, version: toVersionBody(version), trains };
}
