import type { ClubDocument } from "../../../shared/documents.ts";
import type { DocumentPart } from "../../../shared/transfer.ts";
import type { Database } from "../../database/client.ts";
import { handsetTable } from "../../database/records/handsets.ts";
import { memberTable } from "../../database/records/members.ts";
import { readTimetables } from "../../database/records/read-club.ts";
import { readLayout, readRoster } from "../../database/records/read-plan.ts";
import { readBodies } from "../../database/records/read-records.ts";
import { readingTable } from "../../database/records/readings.ts";
import { type ClubScope, clubScope } from "../../database/records/record-table.ts";
import { sessionTable } from "../../database/records/sessions.ts";

/** The parts asked for, every list in the order of codes. */
export async function readDocument(
  database: Database,
  club: ClubScope,
  parts: readonly DocumentPart[],
): Promise<ClubDocument> {
  const scope = clubScope(club);
  const wanted = new Set(parts);
  return {
    ...(wanted.has("layout") && { layout: await readLayout(database, scope) }),
    ...(wanted.has("roster") && { roster: await readRoster(database, scope) }),
    ...(wanted.has("handsets") && { handsets: await readBodies(database, handsetTable, scope) }),
    ...(wanted.has("members") && { members: await readBodies(database, memberTable, scope) }),
    ...(wanted.has("timetables") && { timetables: await readTimetables(database, club) }),
    ...(wanted.has("sessions") && { sessions: await readBodies(database, sessionTable, scope) }),
    ...(wanted.has("readings") && { readings: await readBodies(database, readingTable, scope) }),
  };
}
