import { type CsvError, parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import { Refusal } from "../../../lib/refusal.ts";
import { notCsv } from "./errors.ts";

/** Rows of cells, the heading first. */
export type Sheet = readonly (readonly string[])[];

// what a spreadsheet takes for the start of a formula (OWASP, CSV injection), as csv-stringify escapes it
const FORMULA = "=+\\-@\\t\\r\\uFF1D\\uFF0B\\uFF0D\\uFF20";
const LOOKS_ESCAPED = new RegExp(`^'+[${FORMULA}]`);

/**
 * CSV as RFC 4180 has it, with the mark by which spreadsheets know UTF-8. A cell that would be taken for a formula gets
 * an apostrophe before it, and so does one that reads as if it had one, so that `readSheet` gives back what was written.
 */
export function writeSheet(sheet: Sheet): string {
  const cells = sheet.map((row) => row.map((cell) => (LOOKS_ESCAPED.test(cell) ? `'${cell}` : cell)));
  return stringify(cells, {
    bom: true,
    record_delimiter: "windows",
    escape_formulas: true,
    quoted_match: /[\r\n]/,
  });
}

/** @throws Refusal validation-failed that names the row */
export function readSheet(text: string, delimiter = ","): Sheet {
  try {
    const sheet = parse(text, {
      delimiter,
      bom: true,
      relax_column_count: true,
      // all three: sheets that were joined by hand have several
      record_delimiter: ["\r\n", "\n", "\r"],
    }) as string[][];
    return sheet.map((row) => row.map((cell) => (LOOKS_ESCAPED.test(cell) ? cell.slice(1) : cell)));
  } catch (error) {
    throw notCsv(error as CsvError);
  }
}

/** @throws Refusal validation-failed */
export function decodeUtf8(bytes: Buffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal("validation-failed", "The file is not in UTF-8: save it as CSV UTF-8.");
  }
}
