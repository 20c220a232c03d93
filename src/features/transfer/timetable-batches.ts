import type { ClubDocument } from "../../../shared/documents.ts";
import type { TimetableVersion } from "../../../shared/timetable.ts";
import type { Database } from "../../database/client.ts";
import { versionCode } from "../../database/records/known-codes.ts";
import { type ClubScope, clubScope } from "../../database/records/record-table.ts";
import { toVersionBody, trainScope } from "../../database/records/timetables.ts";
import { newId } from "../../lib/ids.ts";
import type { Flaw } from "../../records/flaws.ts";
import { type Batch, readBatch } from "./batch.ts";
import { listTimetables, type TransferKinds } from "./parts.ts";

/** A version as a document brings it, with its trains. */
export interface VersionBatch {
  readonly timetable: string;
  readonly body: TimetableVersion;
  /** What is stored of it; a new one has its id already, for its trains to name. */
  readonly stored: TimetableVersion | undefined;
  readonly id: string;
  readonly at: Flaw["path"];
  readonly trains: Batch;
}

export interface TimetableBatches {
  readonly timetables: readonly Batch[];
  readonly versions: readonly VersionBatch[];
}

export async function readTimetableBatches(
  database: Database,
  document: ClubDocument,
  kinds: TransferKinds,
  club: ClubScope,
): Promise<TimetableBatches> {
  const timetables: Batch[] = [];
  for (const listed of listTimetables(document, kinds))
    timetables.push(await readBatch(database, listed, clubScope(club)));
  const stored = await readStoredVersions(database, document, club);
  const versions: VersionBatch[] = [];
  for (const [i, { code: timetable, versions: brought }] of (document.timetables ?? []).entries())
    for (const [j, { number, state, note, trains }] of brought.entries()) {
      const known = stored.get(versionCode(timetable, number));
      const id = known?.id ?? newId();
      const at = ["timetables", i, "versions", j];
      const listed = { kind: kinds.train, at: [...at, "trains"], bodies: trains };
      versions.push({
        timetable,
        body: { number, state, note },
        stored: known && toVersionBody(known),
        id,
        at,
        trains: await readBatch(database, listed, trainScope(club, id)),
      });
    }
  return { timetables, versions };
}

async function readStoredVersions(database: Database, { timetables = [] }: ClubDocument, club: ClubScope) {
  const codes = timetables.map(({ code }) => code);
  const found = await database.timetableVersion.findMany({
    where: { clubId: club.id, timetableCode: { in: codes } },
  });
  return new Map(found.map((row) => [versionCode(row.timetableCode, row.number), row]));
}
