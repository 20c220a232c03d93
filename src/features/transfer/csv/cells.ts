/** How one kind of value stands in a cell. A blank cell reads as undefined: the field then takes its default. */
export interface CellForm {
  write(value: unknown): string;
  /** What is not of this form comes out as the text it is, for the record's schema to refuse. */
  read(cell: string): unknown;
}

const unlessBlank =
  (read: (cell: string) => unknown): CellForm["read"] =>
  (cell) =>
    cell === "" ? undefined : read(cell);

const writeScalar = (value: unknown) => (value === null || value === undefined ? "" : String(value));

export const TEXT: CellForm = { write: writeScalar, read: unlessBlank((cell) => cell) };

export const NUMBER: CellForm = {
  write: writeScalar,
  read: unlessBlank((cell) => (/^-?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(cell) ? Number(cell) : cell)),
};

const TRUTHS: Readonly<Record<string, boolean>> = { true: true, yes: true, false: false, no: false };

// spreadsheets write truth in capitals
export const TRUTH: CellForm = {
  write: writeScalar,
  read: unlessBlank((cell) => TRUTHS[cell.toLowerCase()] ?? cell),
};

/** Texts with semicolons between; one inside a text is written `\;`, a backslash `\\`. */
export const LIST: CellForm = {
  write: (value) =>
    (value as readonly string[])
      .map((entry) => entry.replace(/[\\;]/g, (special) => `\\${special}`))
      .join(";"),
  read: unlessBlank(splitList),
};

function splitList(cell: string): string[] {
  const entries = [""];
  for (const [, escaped, separator, plain] of cell.matchAll(/\\(.)|(;)|([^\\;]+|\\$)/gs)) {
    if (separator !== undefined) entries.push("");
    else entries[entries.length - 1] += escaped ?? plain ?? "";
  }
  return entries;
}

interface Power {
  readonly locomotive: string;
  readonly position: string;
}

/** Locomotives in their order with semicolons between; one at the rear is written `E7:rear`. */
export const MOTIVE_POWER: CellForm = {
  write: (value) =>
    (value as readonly Power[])
      .map(({ locomotive, position }) => (position === "head" ? locomotive : `${locomotive}:${position}`))
      .join(";"),
  read: unlessBlank((cell) =>
    cell.split(";").map((entry) => {
      const [locomotive, position] = entry.trim().split(":");
      return position === undefined ? { locomotive } : { locomotive, position };
    }),
  ),
};
