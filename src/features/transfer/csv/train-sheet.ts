import type { Fault } from "../../../../shared/errors.ts";
import type { PathEntry, Train } from "../../../../shared/timetable.ts";
import type { Coded } from "../../../records/record-kind.ts";
import { MOST_FAULTS, notImported } from "../errors.ts";
import { PATH_COLUMNS, TRAIN_COLUMNS } from "./columns.ts";
import { cellFault, noTrain, notFirstRow } from "./errors.ts";
import { columnAt, type Draft, fieldOf, setField } from "./fields.ts";
import { type NamedRow, nameCells } from "./heading.ts";
import { keepAbsent, type ReadRecords } from "./record-sheet.ts";
import type { Sheet } from "./sheet.ts";

const COLUMNS = [...TRAIN_COLUMNS, ...PATH_COLUMNS];
const WHOLE_TRAIN = TRAIN_COLUMNS.filter(({ name }) => name !== "code");

/** One row an entry of the path; what is said of the train as a whole stands in its first. */
export function toTrainSheet(trains: readonly Train[]): Sheet {
  return [COLUMNS.map(({ name }) => name), ...trains.flatMap(toRows)];
}

function toRows(train: Train): string[][] {
  return train.path.map((entry: PathEntry, at) => [
    ...TRAIN_COLUMNS.map((column) =>
      at === 0 || column.name === "code" ? column.form.write(fieldOf(train, column)) : "",
    ),
    ...PATH_COLUMNS.map((column) => column.form.write(fieldOf(entry, column))),
  ]);
}

/**
 * The trains of a sheet: a row with another code begins the next, one with the same code or none goes on with the path.
 * A column that the sheet does not have keeps what `stored` has.
 * @throws Refusal unprocessable for a heading or rows that do not fit
 */
export function fromTrainSheet(sheet: Sheet, stored: ReadonlyMap<string, Coded>): ReadRecords {
  const { columns: present, rows } = nameCells(sheet, COLUMNS);
  const trains = groupRows(rows);
  const drafts = trains.map((own) => {
    const [first] = own;
    const draft: Draft & { path?: Draft[] } = {};
    keepAbsent(draft, WHOLE_TRAIN, present, stored.get(first?.cell("code") ?? ""));
    for (const column of TRAIN_COLUMNS)
      if (present.includes(column)) setField(draft, column, column.form.read(first?.cell(column.name) ?? ""));
    draft.path = own.map(toEntry);
    return draft;
  });
  return {
    drafts,
    locate: ({ path: [train = 0, field, entry, ...rest], detail }) => {
      const own = trains[Number(train)] ?? [];
      if (field === "path" && entry !== undefined)
        return cellFault(own[Number(entry)]?.row ?? 1, columnAt(PATH_COLUMNS, rest), detail);
      const column = field === undefined ? undefined : columnAt(TRAIN_COLUMNS, [field]);
      return cellFault(own[0]?.row ?? 1, column, detail);
    },
  };
}

function toEntry({ cell }: NamedRow): Draft {
  const entry: Draft = {};
  for (const column of PATH_COLUMNS) setField(entry, column, column.form.read(cell(column.name)));
  return entry;
}

function groupRows(rows: readonly NamedRow[]): NamedRow[][] {
  const trains: NamedRow[][] = [];
  const faults: Fault[] = [];
  for (const row of rows) {
    const train = trains.at(-1);
    const first = train?.[0];
    const code = row.cell("code");
    if (train === undefined || first === undefined || (code !== "" && code !== first.cell("code"))) {
      if (code === "") faults.push(cellFault(row.row, "code", noTrain));
      trains.push([row]);
      continue;
    }
    for (const { name } of WHOLE_TRAIN)
      if (row.cell(name) !== "")
        faults.push(cellFault(row.row, name, notFirstRow(first.cell("code"), first.row)));
    train.push(row);
  }
  if (faults.length > 0) throw notImported(faults.length, faults.slice(0, MOST_FAULTS));
  return trains;
}
