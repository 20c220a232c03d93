import { z } from "zod";
import type { ClubDocument } from "../../../../shared/documents.ts";
import type { Fault } from "../../../../shared/errors.ts";
import type { Train } from "../../../../shared/timetable.ts";
import type { ImportResult } from "../../../../shared/transfer.ts";
import type { Database, DatabaseClient } from "../../../database/client.ts";
import { readBodies } from "../../../database/records/read-records.ts";
import { type ClubScope, clubScope } from "../../../database/records/record-table.ts";
import { faultSentence } from "../../../http/fault-sentence.ts";
import type { Flaw } from "../../../records/flaws.ts";
import { reachClub } from "../../../records/reach-club.ts";
import type { Coded, RecordKind } from "../../../records/record-kind.ts";
import { issued, MOST_FAULTS, notImported } from "../errors.ts";
import type { Compose, Composed, TransferService } from "../service.ts";
import type { Column } from "./columns.ts";
import { fromRecordSheet, type ReadRecords, toRecordSheet } from "./record-sheet.ts";
import { readSheet, writeSheet } from "./sheet.ts";
import { readVersionTrains } from "./store.ts";
import { fromTrainSheet, toTrainSheet } from "./train-sheet.ts";

/** A kind whose records stand one a row, and how a document holds them. */
export interface SheetKind {
  readonly kind: RecordKind;
  readonly columns: readonly Column[];
  wrap(records: readonly Coded[]): ClubDocument;
  /** Length of the path that `wrap` puts before a record's position. */
  readonly depth: number;
}

export function createSheetService(
  database: DatabaseClient,
  transfer: Pick<TransferService, "importComposed">,
) {
  const readAll = (handle: Database, club: ClubScope, kind: RecordKind) =>
    readBodies(handle, kind.table, clubScope(club));

  return {
    exportRecords: async (club: string, { kind, columns }: SheetKind) =>
      writeSheet(toRecordSheet(columns, await readAll(database, await reachClub(database, club), kind))),

    async importRecords(
      club: string,
      sheetKind: SheetKind,
      text: string,
      dryRun: boolean,
    ): Promise<ImportResult> {
      const { kind, columns, wrap, depth } = sheetKind;
      const sheet = readSheet(text);
      const compose: Compose<Composed> = async (transaction, scope) => {
        const read = fromRecordSheet(columns, sheet, byCode(await readAll(transaction, scope, kind)));
        return { document: wrap(parseDrafts(kind, read)), locate: within(read, depth) };
      };
      return (await transfer.importComposed(club, compose, { dryRun })).result;
    },

    async exportTrains(code: string, timetable: string, version: number) {
      const club = await reachClub(database, code);
      return writeSheet(toTrainSheet((await readVersionTrains(database, club, timetable, version)).trains));
    },

    async importTrains(
      club: string,
      { timetable, version, kind }: { timetable: string; version: number; kind: RecordKind },
      text: string,
      dryRun: boolean,
    ): Promise<ImportResult> {
      const sheet = readSheet(text);
      const compose: Compose<Composed> = async (transaction, scope) => {
        const reached = await readVersionTrains(transaction, scope, timetable, version);
        if (reached.version.state === "issued") throw issued(timetable, version);
        const read = fromTrainSheet(sheet, byCode(reached.trains));
        const trains = parseDrafts(kind, read) as Train[];
        return {
          document: { timetables: [{ ...reached.timetable, versions: [{ ...reached.version, trains }] }] },
          locate: within(read, TRAIN_DEPTH),
        };
      };
      return (await transfer.importComposed(club, compose, { dryRun })).result;
    },
  };
}

export type SheetService = ReturnType<typeof createSheetService>;

/** timetables, position, versions, position, trains */
const TRAIN_DEPTH = 5;

const byCode = (records: readonly Coded[]) => new Map(records.map((record) => [record.code, record]));

/** A place in the document as a place in the sheet. */
const within =
  ({ locate }: ReadRecords, depth: number) =>
  (flaws: readonly Flaw[]): Fault[] =>
    flaws.map(({ path, detail }) => locate({ path: path.slice(depth), detail }));

/** @throws Refusal unprocessable with the cells that the record's schema does not take */
function parseDrafts({ schema }: RecordKind, { drafts, locate }: ReadRecords): Coded[] {
  const { success, data, error } = z.array(schema).safeParse(drafts, { error: faultSentence });
  if (success) return data;
  const faults = error.issues
    .slice(0, MOST_FAULTS)
    .map(({ path, message }) =>
      locate({ path: path.map((step) => (typeof step === "symbol" ? String(step) : step)), detail: message }),
    );
  throw notImported(error.issues.length, faults);
}
