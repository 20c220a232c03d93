import { type CellForm, LIST, MOTIVE_POWER, NUMBER, TEXT, TRUTH } from "./cells.ts";

/** A column of a sheet and the field of the record that it stands for. */
export interface Column {
  readonly name: string;
  readonly path: readonly string[];
  readonly form: CellForm;
  /** The heading must have it. */
  readonly required: boolean;
}

const column = (name: string, form: CellForm, path: readonly string[], required: boolean): Column => ({
  name,
  form,
  path,
  required,
});
const must = (name: string, form = TEXT, path: readonly string[] = [name]) => column(name, form, path, true);
const may = (name: string, form = TEXT, path: readonly string[] = [name]) => column(name, form, path, false);

/** A current takes two columns: `runningMa` and `runningSource`. */
const current = (field: string, make: typeof must) => [
  make(`${field}Ma`, NUMBER, [field, "ma"]),
  make(`${field}Source`, TEXT, [field, "source"]),
];

export const LOCOMOTIVE_COLUMNS: readonly Column[] = [
  must("code"),
  must("name"),
  must("lengthMm", NUMBER),
  ...current("running", must),
  ...current("standing", must),
  ...current("stall", must),
  ...current("inrush", must),
  may("maxSpeedKmh", NUMBER),
  may("owner"),
  may("note"),
];

export const DECODER_COLUMNS: readonly Column[] = [
  must("code"),
  may("locomotive"),
  must("addressKind"),
  must("address", NUMBER),
  may("analogAllowed", TRUTH),
  may("note"),
];

export const RAKE_COLUMNS: readonly Column[] = [
  must("code"),
  must("name"),
  must("lengthMm", NUMBER),
  may("vehicles", NUMBER),
  ...current("lighting", may),
  ...current("inrush", may),
  may("owner"),
  may("note"),
];

export const HANDSET_COLUMNS: readonly Column[] = [
  must("code"),
  must("name"),
  must("commandSystem"),
  must("kind"),
  may("places", LIST),
  may("batteryMinutes", NUMBER),
  may("state"),
  may("owner"),
  may("note"),
];

export const READING_COLUMNS: readonly Column[] = [
  must("code"),
  must("takenOn"),
  must("origin"),
  may("locomotive"),
  may("state"),
  may("district"),
  may("session"),
  may("slot"),
  may("layoutTime"),
  must("ma", NUMBER),
  may("note"),
];

/** What is said of a train as a whole, in its first row. */
export const TRAIN_COLUMNS: readonly Column[] = [
  must("code"),
  must("name"),
  may("priority", NUMBER),
  may("earlierMinutes", NUMBER),
  may("laterMinutes", NUMBER),
  may("locomotives", MOTIVE_POWER, ["motivePower"]),
  may("rakes", LIST),
  may("lengthMm", NUMBER),
  may("placedAt"),
  may("removedAt"),
  may("requires", LIST),
  may("note"),
];

/** One row an entry of the path. */
export const PATH_COLUMNS: readonly Column[] = [must("section"), must("arrive"), must("depart")];
