import type { Fault } from "../../../../shared/errors.ts";
import type { Flaw } from "../../../records/flaws.ts";
import type { Coded } from "../../../records/record-kind.ts";
import type { Column } from "./columns.ts";
import { cellFault } from "./errors.ts";
import { columnAt, type Draft, fieldOf, setField } from "./fields.ts";
import { nameCells } from "./heading.ts";
import type { Sheet } from "./sheet.ts";

/** Records put together from a sheet, and where in it each of their fields stands. */
export interface ReadRecords {
  readonly drafts: readonly Draft[];
  /** A place in the list of records as a place in the sheet. */
  locate(flaw: Flaw): Fault;
}

/** One row a record. */
export function toRecordSheet(columns: readonly Column[], records: readonly Coded[]): Sheet {
  return [
    columns.map(({ name }) => name),
    ...records.map((record) => columns.map((column) => column.form.write(fieldOf(record, column)))),
  ];
}

/**
 * The records of a sheet. A column that the sheet does not have keeps what `stored` has.
 * @throws Refusal unprocessable for a heading or rows that do not fit
 */
export function fromRecordSheet(
  columns: readonly Column[],
  sheet: Sheet,
  stored: ReadonlyMap<string, Coded>,
): ReadRecords {
  const { columns: present, rows } = nameCells(sheet, columns);
  const drafts = rows.map(({ cell }) => {
    const draft: Draft = {};
    keepAbsent(draft, columns, present, stored.get(cell("code")));
    for (const column of present) setField(draft, column, column.form.read(cell(column.name)));
    return draft;
  });
  return {
    drafts,
    locate: ({ path: [at = 0, ...path], detail }) =>
      cellFault(rows[Number(at)]?.row ?? 1, columnAt(columns, path), detail),
  };
}

/** Fills in the fields of the columns that a sheet does not have, from what is stored. */
export function keepAbsent(
  draft: Draft,
  columns: readonly Column[],
  present: readonly Column[],
  stored: Coded | undefined,
): void {
  if (stored === undefined) return;
  for (const column of columns)
    if (!present.includes(column)) setField(draft, column, fieldOf(stored, column));
}
