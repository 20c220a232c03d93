import { isDeepStrictEqual } from "node:util";
import type { Database } from "../../database/client.ts";
import { readRecords } from "../../database/records/read-records.ts";
import type { RecordTable, Scope, Stored } from "../../database/records/record-table.ts";
import type { Changes, Identified } from "../../database/records/write-records.ts";
import type { Coded } from "../../records/record-kind.ts";
import type { ListedRecords } from "./parts.ts";

/** Records of one collection as a document brings them, beside those that are stored. */
export interface Batch extends ListedRecords {
  readonly scope: Scope;
  readonly stored: readonly Stored<Coded>[];
  readonly storedByCode: ReadonlyMap<string, Stored<Coded>>;
}

export async function readBatch(database: Database, listed: ListedRecords, scope: Scope): Promise<Batch> {
  const stored = listed.bodies.length === 0 ? [] : await readRecords(database, listed.kind.table, scope);
  return toBatch(listed, scope, stored);
}

export function toBatch(listed: ListedRecords, scope: Scope, stored: readonly Stored<Coded>[]): Batch {
  return {
    ...listed,
    scope,
    stored,
    storedByCode: new Map(stored.map((record) => [record.body.code, record])),
  };
}

/** What is to be done with a batch. */
export interface Sorted extends Changes<Coded> {
  readonly unchanged: number;
}

/** A record that says what is stored, in whatever spelling of its times, stays as it is. The bodies must be without flaws. */
export function sortBatch({ kind: { table }, bodies, storedByCode, scope }: Batch): Sorted {
  const made: Coded[] = [];
  const changed: Identified<Coded>[] = [];
  for (const body of bodies) {
    const stored = storedByCode.get(body.code);
    if (stored === undefined) made.push(body);
    else if (!isSame(table, scope, stored.body, body)) changed.push({ id: stored.id, body });
  }
  return { made, changed, unchanged: bodies.length - made.length - changed.length };
}

function isSame(table: RecordTable<Coded>, scope: Scope, a: Coded, b: Coded): boolean {
  return isDeepStrictEqual(toRows(table, scope, a), toRows(table, scope, b));
}

const toRows = (table: RecordTable<Coded>, scope: Scope, body: Coded) => [
  table.toColumns(body, scope),
  ...(table.parts ?? []).map((part) => part.toRows(body, scope)),
];
