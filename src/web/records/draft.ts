import type { Field, RecordDraft, TableKind } from "./fields.ts";

/** What stands in the cells of a row while it is edited, by path. */
export type Cells = Readonly<Record<string, string>>;

/** A row read: the record it makes, and what is wrong in which cell. */
export interface ReadRow {
  readonly record: RecordDraft;
  readonly faults: Readonly<Record<string, string>>;
}

export const YES = "yes";

/** The value at a path, undefined where there is none. */
export function valueAt(record: RecordDraft, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>((value, step) => (value as Record<string, unknown> | null | undefined)?.[step], record);
}

/** A record in cells. */
export function toCells({ fields }: TableKind, record: RecordDraft): Cells {
  return Object.fromEntries(fields.map((field) => [field.path, toCell(field, valueAt(record, field.path))]));
}

export function toCell(field: Field, value: unknown): string {
  if (value === null || value === undefined) return "";
  if (field.holds === "yes") return value === true ? YES : "";
  if (field.holds === "many") return (value as readonly string[]).join(", ");
  if (field.holds === "list") return field.list.write(value as readonly unknown[]);
  return String(value);
}

/**
 * Reads the cells of a row. `known` are the codes of the records that fields may name; where a kind's are not known yet,
 * anything goes and the service says what is wrong.
 */
export function readCells(
  kind: TableKind,
  cells: Cells,
  known: Partial<Record<string, ReadonlySet<string>>>,
): ReadRow {
  const faults: Record<string, string> = {};
  let record: RecordDraft = {};
  for (const field of kind.fields) {
    const read = readCell(field, (cells[field.path] ?? "").trim(), known);
    if ("fault" in read) faults[field.path] = read.fault;
    else if (read.value !== undefined) record = withValue(record, field.path.split("."), read.value);
  }
  return { record: kind.complete?.(record) ?? record, faults };
}

/** A row while it is edited. */
export interface OpenRow {
  /** What stood in the cells when it was opened, or when somebody else's changes came in last. */
  readonly first: Cells;
  readonly cells: Cells;
  /** The version that `first` is of; undefined: a new row. */
  readonly version: number | undefined;
  /** What somebody else wrote meanwhile into cells that were changed here. */
  readonly theirs: Cells;
}

export const isEdited = ({ first, cells }: OpenRow) =>
  Object.keys({ ...first, ...cells }).some((path) => (first[path] ?? "") !== (cells[path] ?? ""));

/** The row as it is edited, brought to a later version: what differs still is told of until one is the other. */
export function followTheirs(row: OpenRow, latest: Cells, version: number | undefined): OpenRow {
  const { cells, theirs } = mergeCells(row.first, row.cells, latest);
  const open = Object.keys(row.theirs).filter((path) => latest[path] !== cells[path]);
  const still = Object.fromEntries(open.map((path) => [path, latest[path] ?? ""]));
  return { first: latest, cells, version, theirs: { ...still, ...theirs } };
}

/** The cells of a row that two changed at once. */
export interface MergedCells {
  readonly cells: Cells;
  /** What the other wrote where both changed a cell, by path. */
  readonly theirs: Cells;
}

/** Brings a row that is being edited to what somebody else made of it meanwhile: what only they changed follows them. */
export function mergeCells(first: Cells, mine: Cells, latest: Cells): MergedCells {
  const paths = Object.keys({ ...latest, ...mine });
  const isMine = (path: string) => mine[path] !== first[path];
  const isClash = (path: string) =>
    isMine(path) && latest[path] !== first[path] && latest[path] !== mine[path];
  const pick = (path: string) => [path, (isMine(path) ? mine : latest)[path] ?? ""] as const;
  return {
    cells: Object.fromEntries(paths.map(pick)),
    theirs: Object.fromEntries(paths.filter(isClash).map((path) => [path, latest[path] ?? ""])),
  };
}

type ReadCell = { readonly value: unknown } | { readonly fault: string };

const CODE = /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,39}$/u;
const CODE_FAULT = "Use letters, digits, dots, dashes or underscores, starting with a letter or digit.";

function readCell(field: Field, text: string, known: Parameters<typeof readCells>[2]): ReadCell {
  if (field.holds === "yes") return { value: text === YES };
  if (text === "") return readEmpty(field);
  switch (field.holds) {
    case "code":
      return CODE.test(text) ? { value: text } : { fault: CODE_FAULT };
    case "text":
    case "lines":
      return text.length <= field.most
        ? { value: text }
        : { fault: `At most ${field.most} letters: shorten it.` };
    case "whole":
    case "number":
      return readNumber(field, text);
    case "choice":
      return field.options.includes(text)
        ? { value: text }
        : { fault: `Choose one of ${field.options.join(", ")}.` };
    case "day":
      return /^\d{4}-\d\d-\d\d$/.test(text) ? { value: text } : { fault: "Write the day as 2027-03-20." };
    case "one":
      return isKnown(known[field.of], text)
        ? { value: text }
        : { fault: `There is no ${text}: choose one there is.` };
    case "many": {
      const codes = text.split(/[\s,;]+/).filter((code) => code !== "");
      const unknown = codes.find((code) => !isKnown(known[field.of], code));
      return unknown === undefined ? { value: codes } : { fault: `There is no ${unknown}.` };
    }
    case "list": {
      const parts = field.list.read(text);
      return typeof parts === "string" ? { fault: parts } : { value: parts };
    }
  }
}

function readEmpty(field: Field): ReadCell {
  if (field.holds === "many" || field.holds === "list")
    return field.isOptional ? { value: [] } : { fault: "Fill this in." };
  if (!field.isOptional) return { fault: "Fill this in." };
  return { value: field.holds === "text" || field.holds === "lines" ? "" : null };
}

function readNumber(
  { holds, unit, least, most }: Extract<Field, { holds: "whole" | "number" }>,
  text: string,
): ReadCell {
  const value = Number(text.replace(",", ".").replace("−", "-"));
  const isFit = Number.isFinite(value) && value >= least && value <= most;
  if (isFit && (holds === "number" || Number.isInteger(value))) return { value };
  const what = holds === "whole" ? "A whole number" : "A number";
  return { fault: `${what} from ${least} to ${most}${unit ? ` ${unit}` : ""}.` };
}

const isKnown = (codes: ReadonlySet<string> | undefined, code: string) =>
  codes === undefined || codes.has(code);

function withValue(record: RecordDraft, path: readonly string[], value: unknown): RecordDraft {
  const [step = "", ...rest] = path;
  if (rest.length === 0) return { ...record, [step]: value };
  const inner = (record[step] ?? {}) as RecordDraft;
  return { ...record, [step]: withValue(inner, rest, value) };
}
