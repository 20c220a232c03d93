import type { Fault } from "../../../../shared/errors.ts";
import { MOST_FAULTS, notImported } from "../errors.ts";
import type { Column } from "./columns.ts";
import {
  cellFault,
  EMPTY,
  missingColumn,
  repeatedColumn,
  unknownColumn,
  wrongSeparator,
  wrongWidth,
} from "./errors.ts";
import type { Sheet } from "./sheet.ts";

/** A row with its cells by the names of their columns. */
export interface NamedRow {
  /** As a spreadsheet counts: the heading is 1. */
  readonly row: number;
  cell(column: string): string;
}

export interface NamedSheet {
  /** The columns that the sheet has. */
  readonly columns: readonly Column[];
  readonly rows: readonly NamedRow[];
}

/**
 * Names the cells by the heading. Rows without any text, as spreadsheets leave them at the end, are passed over.
 * @throws Refusal unprocessable for columns that are missing, unknown or there twice, and rows of another width
 */
export function nameCells(sheet: Sheet, columns: readonly Column[]): NamedSheet {
  const [heading, ...rest] = sheet;
  refuse(heading === undefined ? [cellFault(1, undefined, EMPTY)] : findHeadingFaults(heading, columns));
  const names = heading ?? [];
  const rows = rest
    .map((cells, at) => ({ cells, row: at + 2 }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
  refuse(
    rows
      .filter(({ cells }) => cells.length !== names.length)
      .map(({ cells, row }) => cellFault(row, undefined, wrongWidth(cells.length, names.length))),
  );
  const at = new Map(names.map((name, i) => [name, i]));
  return {
    columns: columns.filter(({ name }) => at.has(name)),
    rows: rows.map(({ cells, row }) => ({ row, cell: (name) => cells[at.get(name) ?? -1] ?? "" })),
  };
}

const SEPARATORS = [
  [";", "semicolons"],
  ["\t", "tabs"],
] as const;

function findHeadingFaults(heading: readonly string[], columns: readonly Column[]): Fault[] {
  const known = columns.map(({ name }) => name);
  const separator = SEPARATORS.find(([mark]) => heading.length === 1 && heading[0]?.includes(mark));
  if (separator) return [cellFault(1, undefined, wrongSeparator(separator[1]))];
  return [
    ...heading.flatMap((name, at) => {
      if (!known.includes(name)) return [cellFault(1, name, unknownColumn(name, known))];
      return heading.indexOf(name) < at ? [cellFault(1, name, repeatedColumn(name))] : [];
    }),
    ...columns
      .filter(({ name, required }) => required && !heading.includes(name))
      .map(({ name }) => cellFault(1, name, missingColumn(name))),
  ];
}

function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw notImported(faults.length, faults.slice(0, MOST_FAULTS));
}
