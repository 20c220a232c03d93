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

/** A document put together from what somebody sent and what is stored. */
export interface Composed {
  readonly document: ClubDocument;
  /** How a place in the document is told to whoever sent it; without it, as it is. */
  readonly locate?: (flaws: readonly Flaw[]) => readonly Fault[];
}

/** Reads what it needs by the transaction in which the import is written, and by nothing else; it may run more than once. */
export type Compose<C extends Composed> = (transaction: Transaction, club: ClubScope) => Promise<C>;

export interface TransferService {
  /** @throws Refusal not-found */
  exportClub(club: string, parts?: readonly DocumentPart[]): Promise<ClubDocument>;
  /**
   * Makes what is new and changes what is different; what the document does not name stays. All of it or nothing.
   * @throws Refusal not-found; unprocessable with every place that is wrong
   */
  importClub(
    club: string,
    document: ClubDocument,
    options: { readonly dryRun: boolean },
  ): Promise<ImportResult>;
  /**
   * As `importClub`, of a document that keeps some of what is stored: what others change meanwhile is kept as they left it.
   * @throws Refusal as `importClub`, and what `compose` throws
   */
  importComposed<C extends Composed>(
    club: string,
    compose: Compose<C>,
    options: { readonly dryRun: boolean },
  ): Promise<{ readonly result: ImportResult; readonly composed: C }>;
}

/** Ends a transaction that was only tried. */
class TriedOut extends Error {}

export function createTransferService(database: DatabaseClient, kinds: TransferKinds): TransferService {
  async function importComposed<C extends Composed>(
    code: string,
    compose: Compose<C>,
    { dryRun }: { readonly dryRun: boolean },
  ) {
    let tried: { readonly result: ImportResult; readonly composed: C } | undefined;
    const written = lookAgain(() =>
      inTransaction(database, async (transaction) => {
        const club = await reachClub(transaction, code);
        const composed = await compose(transaction, club);
        const { document, locate = toFaults } = composed;
        refuse(findUnstorableText(document), locate);
        const brought = await readBrought(transaction, document, kinds, club);
        refuse(await examineImport(transaction, club.id, brought), locate);
        const counts = await writeImport(transaction, club.id, brought);
        const outcome = { result: { dryRun, counts }, composed };
        if (!dryRun) return outcome;
        tried = outcome;
        throw new TriedOut("tried out");
      }),
    );
    return written.catch((error: unknown) => {
      if (error instanceof TriedOut && tried) return tried;
      throw error;
    });
  }

  return {
    exportClub: (code, parts = DOCUMENT_PARTS) =>
      inTransaction(database, async (transaction) =>
        readDocument(transaction, await reachClub(transaction, code), parts),
      ),
    importClub: async (code, document, options) =>
      (await importComposed(code, async () => ({ document }), options)).result,
    importComposed,
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

function refuse(flaws: readonly Flaw[], locate: NonNullable<Composed["locate"]>): void {
  if (flaws.length > 0) throw notImported(flaws.length, locate(flaws.slice(0, MOST_FAULTS)));
}
