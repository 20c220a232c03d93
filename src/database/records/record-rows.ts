import type { Database } from "../client.ts";
import type { Model } from "./record-table.ts";

/** What the store needs of a model of the client, the same of each. */
export interface Rows<Row> {
  findMany(args: object): Promise<Row[]>;
  findFirst(args: object): Promise<Row | null>;
  count(args: object): Promise<number>;
  createMany(args: { readonly data: readonly object[] }): Promise<{ count: number }>;
  updateMany(args: { readonly where: object; readonly data: object }): Promise<{ count: number }>;
  deleteMany(args: { readonly where: object }): Promise<{ count: number }>;
}

/** The client types every model by itself; this is the one place that takes them as alike. */
export const rowsOf = <Row>(database: Database, model: Model): Rows<Row> =>
  database[model] as unknown as Rows<Row>;
