import type { Database } from "../client.ts";
import { rowsOf } from "./record-rows.ts";
import type { RecordRow, RecordTable, Scope, Stored } from "./record-table.ts";

export interface PageOfRecords {
  /** Conditions beside the scope's. */
  readonly where?: object;
  /** Only codes after this one. */
  readonly after?: string | undefined;
  readonly limit?: number;
}

/** Records of a collection in the order of their codes; all of them unless limited. */
export async function readRecords<Body extends { readonly code: string }, Row extends RecordRow>(
  database: Database,
  table: RecordTable<Body, Row>,
  scope: Scope,
  { where = {}, after, limit }: PageOfRecords = {},
): Promise<Stored<Body>[]> {
  const rows = await rowsOf<RecordRow>(database, table.model).findMany({
    where: { AND: [scope.columns, where, after === undefined ? {} : { code: { gt: after } }] },
    orderBy: { code: "asc" },
    ...(limit !== undefined && { take: limit }),
  });
  return (await withParts(database, table, rows)).map((row) => toStored(table, row, scope));
}

/** The bodies alone. */
export async function readBodies<Body extends { readonly code: string }, Row extends RecordRow>(
  database: Database,
  table: RecordTable<Body, Row>,
  scope: Scope,
): Promise<Body[]> {
  return (await readRecords(database, table, scope)).map((record) => record.body);
}

/** The record with this code, undefined where there is none. */
export async function readRecord<Body extends { readonly code: string }, Row extends RecordRow>(
  database: Database,
  table: RecordTable<Body, Row>,
  scope: Scope,
  code: string,
): Promise<Stored<Body> | undefined> {
  const [stored] = await readRecords(database, table, scope, { where: { code }, limit: 1 });
  return stored;
}

/** How many records the collection has. */
export const countRecords = (database: Database, table: Pick<RecordTable<never>, "model">, scope: Scope) =>
  rowsOf(database, table.model).count({ where: scope.columns });

function toStored<Body extends { readonly code: string }, Row extends RecordRow>(
  table: RecordTable<Body, Row>,
  row: Row,
  scope: Scope,
): Stored<Body> {
  const { id, version, updatedAt } = row;
  return { id, version, updatedAt, body: table.toBody(row, scope) };
}

/**
 * Reads the parts of all the rows, a query a table, one after the other: a transaction has one connection, and the
 * client would send the queries of an `include` down it at the same time.
 */
async function withParts<Body extends { readonly code: string }, Row extends RecordRow>(
  database: Database,
  { parts = [] }: RecordTable<Body, Row>,
  rows: readonly RecordRow[],
): Promise<readonly Row[]> {
  const whole = rows.map((row): RecordRow & Record<string, unknown> => ({ ...row }));
  for (const { field, model, owner } of parts) {
    const found = await rowsOf<Record<string, unknown>>(database, model).findMany({
      where: { [owner]: { in: rows.map(({ id }) => id) } },
      orderBy: { position: "asc" },
    });
    const byOwner = new Map<unknown, object[]>(whole.map((row) => [row.id, []]));
    for (const part of found) byOwner.get(part[owner])?.push(part);
    for (const row of whole) row[field] = byOwner.get(row.id);
  }
  return whole as unknown as Row[];
}
