import { newId } from "../../lib/ids.ts";
import type { Transaction } from "../transaction.ts";
import { insertRows, rowsOf, updateRows } from "./record-rows.ts";
import type { PartTable, RecordTable, Scope, Stored } from "./record-table.ts";

/** A record's body and the id of its row. */
export interface Identified<Body> {
  readonly id: string;
  readonly body: Body;
}

/** What is to be written of one collection: bodies of new records, and new bodies of those there are. */
export interface Changes<Body> {
  readonly made: readonly Body[];
  readonly changed: readonly Identified<Body>[];
}

/**
 * Makes and changes records with their parts, in a few statements whatever their number. Parts that others refer to may
 * pass from one of the records to another.
 */
export async function writeRecords<Body extends { readonly code: string }>(
  transaction: Transaction,
  table: RecordTable<Body, never>,
  scope: Scope,
  { made, changed }: Changes<Body>,
): Promise<void> {
  const identified = made.map((body) => ({ id: newId(), body }));
  const toRow = ({ id, body }: Identified<Body>) => ({
    id,
    code: body.code,
    ...table.toColumns(body, scope),
  });
  await insertRows(
    transaction,
    table.model,
    identified.map((item) => ({ ...toRow(item), ...scope.columns })),
  );
  await updateRows(transaction, table.model, changed.map(toRow));
  await replaceParts(transaction, table, scope, [...identified, ...changed]);
}

/**
 * Changes one record from what it was read as.
 * @returns false, with nothing changed, when it is no longer at that version or gone
 */
export async function replaceRecord<Body extends { readonly code: string }>(
  transaction: Transaction,
  table: RecordTable<Body, never>,
  scope: Scope,
  item: Identified<Body>,
  stored: Pick<Stored<Body>, "version" | "body">,
): Promise<boolean> {
  const { count } = await rowsOf(transaction, table.model).updateMany({
    where: { id: item.id, version: stored.version },
    data: { code: item.body.code, ...table.toColumns(item.body, scope) },
  });
  if (count === 0) return false;
  for (const part of table.parts ?? [])
    for (const [code, next] of part.renamed?.(stored.body, item.body) ?? [])
      await rowsOf(transaction, part.model).updateMany({
        where: { [part.owner]: item.id, code },
        data: { code: next },
      });
  await replaceParts(transaction, table, scope, [item]);
  return true;
}

/**
 * Takes out the parts of records that are about to change, so that nothing they named is held by them any more. Parts
 * that others refer to stay.
 */
export async function takeOutParts(
  transaction: Transaction,
  table: Pick<RecordTable<never, never>, "parts">,
  ids: readonly string[],
): Promise<void> {
  for (const part of table.parts ?? [])
    if (part.key === undefined && ids.length > 0)
      await rowsOf(transaction, part.model).deleteMany({ where: { [part.owner]: { in: ids } } });
}

/** @returns false, with nothing removed, when the record is no longer at that version or gone */
export async function removeRecord(
  transaction: Transaction,
  table: Pick<RecordTable<never, never>, "model">,
  id: string,
  version: number,
): Promise<boolean> {
  const { count } = await rowsOf(transaction, table.model).deleteMany({ where: { id, version } });
  return count > 0;
}

/** Lets constraints that wait for the end of the transaction speak now, while what they say can still be told apart. */
export async function settle(transaction: Transaction): Promise<void> {
  await transaction.$executeRaw`set constraints all immediate`;
}

async function replaceParts<Body extends { readonly code: string }>(
  transaction: Transaction,
  table: RecordTable<Body, never>,
  scope: Scope,
  items: readonly Identified<Body>[],
): Promise<void> {
  for (const part of table.parts ?? []) {
    const rows = items.flatMap((item) => rowsOfPart(part, scope, item));
    const owners = { [part.owner]: { in: items.map(({ id }) => id) } };
    const unmade = part.key === undefined ? rows : await keepRows(transaction, part, part.key, owners, rows);
    if (part.key === undefined) await rowsOf(transaction, part.model).deleteMany({ where: owners });
    await insertRows(transaction, part.model, unmade);
  }
}

/** Changes the rows that stay where they are and removes those that go; returns those still to be made. */
async function keepRows<Body>(
  transaction: Transaction,
  part: PartTable<Body>,
  key: string,
  owners: object,
  rows: readonly PartRow[],
): Promise<readonly PartRow[]> {
  const model = rowsOf<PartRow>(transaction, part.model);
  const before = new Set((await model.findMany({ where: owners })).map((row) => row[key]));
  for (const row of rows)
    if (before.has(row[key])) await model.updateMany({ where: { ...owners, [key]: row[key] }, data: row });
  await model.deleteMany({ where: { ...owners, [key]: { notIn: rows.map((row) => row[key]) } } });
  return rows.filter((row) => !before.has(row[key]));
}

type PartRow = Readonly<Record<string, unknown>>;

const rowsOfPart = <Body>(part: PartTable<Body>, scope: Scope, { id, body }: Identified<Body>): PartRow[] =>
  part.toRows(body, scope).map((row) => ({ ...row, clubId: scope.club.id, [part.owner]: id }));
