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
  const rows = await rowsOf<Row>(database, table.model).findMany({
    where: { AND: [scope.columns, where, after === undefined ? {} : { code: { gt: after } }] },
    orderBy: { code: "asc" },
    ...(table.include && { include: table.include }),
    ...(limit !== undefined && { take: limit }),
  });
  return rows.map((row) => toStored(table, row, scope));
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
  const row = await rowsOf<Row>(database, table.model).findFirst({
    where: { ...scope.columns, code },
    ...(table.include && { include: table.include }),
  });
  return row === null ? undefined : toStored(table, row, scope);
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
