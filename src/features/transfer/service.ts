import type { ClubDocument } from "../../../shared/documents.ts";
import type { Fault } from "../../../shared/errors.ts";
import { DOCUMENT_PARTS, type DocumentPart, type ImportResult } from "../../../shared/transfer.ts";
import type { DatabaseClient } from "../../database/client.ts";
import { type ClubScope, clubScope } from "../../database/records/record-table.ts";
import { inTransaction, type Transaction } from "../../database/transaction.ts";
import { type Flaw, findUnstorableText, toFaults } from "../../records/flaws.ts";
import { lookAgain } from "../../records/look-again.ts";
import { reachClub } from "../../records/reach-club.ts";
import { readBatch } from "./batch.ts";
import { MOST_FAULTS, notImported } from "./errors.ts";
import { type Brought, examineImport } from "./examine.ts";
import { listRecords, listSessions, type TransferKinds } from "./parts.ts";
import { readDocument } from "./store.ts";
import { readTimetableBatches } from "./timetable-batches.ts";
import { writeImport } from "./write.ts";

export interface ImportOptions {
  readonly dryRun: boolean;
  /** How a place in the document is told to whoever sent it. */
  readonly locate?: (flaws: readonly Flaw[]) => readonly Fault[];
}

export interface TransferService {
  /** @throws Refusal not-found */
  exportClub(club: string, parts?: readonly DocumentPart[]): Promise<ClubDocument>;
  /**
   * Makes what is new and changes what is different; what the document does not name stays. All of it or nothing.
   * @throws Refusal not-found; unprocessable with every place that is wrong
   */
  importClub(club: string, document: ClubDocument, options: ImportOptions): Promise<ImportResult>;
}

/** Ends a transaction that was only tried. */
class TriedOut extends Error {
  readonly result: ImportResult;
  constructor(result: ImportResult) {
    super("tried out");
    this.result = result;
  }
}

export function createTransferService(database: DatabaseClient, kinds: TransferKinds): TransferService {
  return {
    exportClub: (code, parts = DOCUMENT_PARTS) =>
      inTransaction(database, async (transaction) =>
        readDocument(transaction, await reachClub(transaction, code), parts),
      ),

    importClub: (code, document, { dryRun, locate = toFaults }) =>
      lookAgain(() =>
        inTransaction(database, async (transaction) => {
          const club = await reachClub(transaction, code);
          refuse(findUnstorableText(document), locate);
          const brought = await readBrought(transaction, document, kinds, club);
          refuse(await examineImport(transaction, club.id, brought), locate);
          const counts = await writeImport(transaction, club.id, brought);
          if (dryRun) throw new TriedOut({ dryRun, counts });
          return { dryRun, counts };
        }),
      ).catch((error: unknown) => {
        if (error instanceof TriedOut) return error.result;
        throw error;
      }),
  };
}

async function readBrought(
  transaction: Transaction,
  document: ClubDocument,
  kinds: TransferKinds,
  club: ClubScope,
): Promise<Brought> {
  const read = async (listed: ReturnType<typeof listRecords>) => {
    const batches = [];
    for (const each of listed) batches.push(await readBatch(transaction, each, clubScope(club)));
    return batches;
  };
  return {
    document,
    records: await read(listRecords(document, kinds)),
    ...(await readTimetableBatches(transaction, document, kinds, club)),
    sessions: await read(listSessions(document, kinds)),
  };
}

function refuse(flaws: readonly Flaw[], locate: NonNullable<ImportOptions["locate"]>): void {
  if (flaws.length > 0) throw notImported(flaws.length, locate(flaws.slice(0, MOST_FAULTS)));
}
