import type { CsvError } from "csv-parse/sync";
import type { Fault } from "../../../../shared/errors.ts";
import { Refusal } from "../../../lib/refusal.ts";

/** A place in a sheet: the row as a spreadsheet counts, the heading being 1. */
export const cellFault = (row: number, column: string | undefined, detail: string): Fault => ({
  pointer: column === undefined ? `/body/${row}` : `/body/${row}/${column}`,
  detail,
  row,
  ...(column !== undefined && { column }),
});

export function notCsv({ message, records }: CsvError): Refusal {
  const row = Number(records ?? 0) + 1;
  const detail = `Row ${row} is not CSV (${message}): write a quote inside quotes twice.`;
  return new Refusal("validation-failed", detail, [cellFault(row, undefined, detail)]);
}

export const EMPTY = "The file is empty: its first row must name the columns.";

export const wrongSeparator = (name: string) =>
  `The cells are separated by ${name}: save the file with commas between them.`;

export const missingColumn = (column: string) => `The column ${column} is missing: add it.`;

export const unknownColumn = (column: string, known: readonly string[]) =>
  `There is no column ${column}: take it out, or name one of ${known.join(", ")}.`;

export const repeatedColumn = (column: string) =>
  `The column ${column} stands here a second time: take one out.`;

export const wrongWidth = (cells: number, columns: number) =>
  `The row has ${cells} cells and the heading ${columns}: give each column one cell.`;

export const noTrain = "The row belongs to no train: name its train in the column code.";

export const notFirstRow = (code: string, row: number) =>
  `What is said of train ${code} as a whole stands in its first row, ${row}: leave this cell empty.`;
