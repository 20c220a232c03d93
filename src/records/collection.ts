import type { Database, DatabaseClient } from "../database/client.ts";
import { readRecord, readRecords } from "../database/records/read-records.ts";
import type { RecordRow, Scope, Stored } from "../database/records/record-table.ts";
import { removeRecord, replaceRecord, settle, writeRecords } from "../database/records/write-records.ts";
import { inTransaction, type Transaction } from "../database/transaction.ts";
import { assertCurrent, type Precondition } from "../lib/precondition.ts";
import { Refusal } from "../lib/refusal.ts";
import { toWords } from "../lib/words.ts";
import { assertStorable, assertUnused } from "./examine.ts";
import { lookAgain } from "./look-again.ts";
import type { Coded, RecordKind } from "./record-kind.ts";

/** A collection that a request has reached. */
export interface Destination {
  readonly scope: Scope;
  /** Which of the records there are for whoever asks; all of them unless it is given. */
  readonly where?: object;
  /** What else comes with a new record, in its transaction. */
  onMade?(transaction: Transaction, code: string): Promise<void>;
  /** What goes before a record can, in its transaction, if it still is at that version. */
  onRemoved?(
    transaction: Transaction,
    record: { readonly id: string; readonly version: number },
  ): Promise<void>;
  /** Refuses a change of anything in it; inside the transaction it also keeps that so until the end. */
  guard?(database: Database): Promise<void>;
}

export interface Page {
  readonly where: object;
  readonly after: string | undefined;
  readonly limit: number;
}

export type Collection<Body extends Coded> = ReturnType<typeof createCollection<Body, RecordRow>>;

/**
 * Reads and writes the records of one kind. Each write looks first, to say in words what is wrong, and then relies on
 * versions and constraints alone: between the two anyone may have written.
 */
export function createCollection<Body extends Coded, Row extends RecordRow>(
  database: DatabaseClient,
  kind: RecordKind<Body, Row>,
) {
  const { table } = kind;

  async function find({ scope }: Destination, code: string): Promise<Stored<Body>> {
    const stored = await readRecord(database, table, scope, code);
    if (stored) return stored;
    throw new Refusal("not-found", `There is no ${toWords(kind.one)} ${code} here.`);
  }

  /** Writes as one, then reads the record that came out of it. */
  function write(
    { scope, guard }: Destination,
    code: string,
    work: (transaction: Transaction) => Promise<boolean>,
  ): Promise<Stored<Body> | undefined> {
    return inTransaction(
      database,
      async (transaction) => {
        await guard?.(transaction);
        if (!(await work(transaction))) return undefined;
        await settle(transaction);
        return readRecord(transaction, table, scope, code);
      },
      "ReadCommitted",
    );
  }

  return {
    list: ({ scope, where }: Destination, page: Page) =>
      readRecords(database, table, scope, where ? { ...page, where: { AND: [page.where, where] } } : page),
    read: find,
    create: (at: Destination, body: Body): Promise<Stored<Body>> =>
      lookAgain(async () => {
        await at.guard?.(database);
        await assertStorable(database, kind, at.scope, body);
        return write(at, body.code, async (transaction) => {
          await writeRecords(transaction, table, at.scope, { made: [body], changed: [] });
          await at.onMade?.(transaction, body.code);
          return true;
        });
      }),
    replace: (at: Destination, code: string, body: Body, precondition: Precondition): Promise<Stored<Body>> =>
      lookAgain(async () => {
        const stored = await find(at, code);
        assertCurrent(precondition, stored.version);
        await at.guard?.(database);
        await assertStorable(database, kind, at.scope, body, stored);
        return write(at, body.code, (transaction) =>
          replaceRecord(transaction, table, at.scope, { id: stored.id, body }, stored),
        );
      }),
    remove: (at: Destination, code: string, precondition: Precondition): Promise<true> =>
      lookAgain(async () => {
        const stored = await find(at, code);
        assertCurrent(precondition, stored.version);
        await at.guard?.(database);
        await assertUnused(database, kind, at.scope, stored.body);
        const gone = await inTransaction(
          database,
          async (transaction) => {
            await at.guard?.(transaction);
            await at.onRemoved?.(transaction, stored);
            return removeRecord(transaction, table, stored.id, stored.version);
          },
          "ReadCommitted",
        );
        return gone || undefined;
      }),
  };
}
