import type { Fault } from "../../../../shared/errors.ts";
import type { RosterMapping } from "../../../../shared/mapped-import.ts";
import type { Decoder, Locomotive } from "../../../../shared/roster.ts";
import { cellFault, wrongWidth } from "../csv/errors.ts";
import type { Sheet } from "../csv/sheet.ts";
import { type Quantity, readFigure } from "./read-figure.ts";

/** Where in the sheet a record's field came from. */
export interface Origin {
  readonly row: number;
  /** Their heading, by our field. */
  readonly columns: Readonly<Record<string, string | undefined>>;
}

export interface MappedRoster {
  readonly locomotives: readonly Locomotive[];
  readonly decoders: readonly Decoder[];
  /** Of each locomotive; of each decoder. */
  readonly origins: readonly Origin[];
  readonly decoderOrigins: readonly Origin[];
  readonly faults: readonly Fault[];
}

/** What a club has already, by the code of the locomotive. */
export interface StoredRoster {
  readonly locomotives: ReadonlyMap<string, Locomotive>;
  readonly decoders: ReadonlyMap<string, Decoder>;
}

const NOTHING_STORED: StoredRoster = { locomotives: new Map(), decoders: new Map() };

/**
 * Locomotives and their decoders from somebody's sheet, or every cell that cannot be read. Blank rows are passed over. What a
 * sheet says nothing of stays as `stored` has it; a figure that stands for all is for locomotives without one.
 */
export function mapRoster(sheet: Sheet, mapping: RosterMapping, stored = NOTHING_STORED): MappedRoster {
  const [headings = [], ...rows] = sheet;
  const faults = [...findHeadingFaults(headings, mapping), ...findWidthFaults(headings.length, rows)];
  if (faults.length > 0) return { locomotives: [], decoders: [], origins: [], decoderOrigins: [], faults };
  const found = rows
    .map((cells, at) => ({ cells, row: at + 2 }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ""))
    .map(({ cells, row }) =>
      readRow((heading) => (cells[headings.indexOf(heading)] ?? "").trim(), row, mapping, faults, stored),
    );
  return {
    locomotives: found.map(({ locomotive }) => locomotive),
    decoders: found.flatMap(({ decoder }) => decoder ?? []),
    origins: found.map(({ origin }) => origin),
    decoderOrigins: found.flatMap(({ decoder, origin }) => (decoder ? [origin] : [])),
    faults,
  };
}

function findHeadingFaults(headings: readonly string[], mapping: RosterMapping): Fault[] {
  return [...new Set(columnsOf(mapping))].flatMap((heading) => {
    if (!headings.includes(heading))
      return [cellFault(1, heading, `The sheet has no column ${heading}: choose one of its headings.`)];
    if (headings.indexOf(heading) === headings.lastIndexOf(heading)) return [];
    return [cellFault(1, heading, `Two columns are called ${heading}: give one of them another heading.`)];
  });
}

/** A comma in a figure that nobody put in quotes moves all that follows into the next column: not to be read past. */
function findWidthFaults(width: number, rows: Sheet): Fault[] {
  return rows.flatMap((cells, at) => {
    const filled = cells.findLastIndex((cell) => cell.trim() !== "") + 1;
    const fits = filled === 0 || (filled <= width && cells.length >= width);
    return fits ? [] : [cellFault(at + 2, undefined, wrongWidth(cells.length, width))];
  });
}

const columnsOf = (mapping: RosterMapping): string[] => {
  const { code, name, length, running, standing, stall, inrush, maxSpeed, address, owner, note } = mapping;
  return [
    code,
    ...[name, length.column, running.column, standing.column, stall.column, inrush.column],
    ...[maxSpeed.column, address, owner, note],
  ].filter((heading) => heading !== null);
};

type Cell = (heading: string) => string;

function readRow(cell: Cell, row: number, mapping: RosterMapping, faults: Fault[], stored: StoredRoster) {
  const text = (heading: string | null) => (heading === null ? "" : cell(heading));
  const code = text(mapping.code).replaceAll(/[\s/]+/g, "-");
  const before = stored.locomotives.get(code);
  const figure = (
    quantity: Quantity,
    { column, unit }: { readonly column: string | null; readonly unit: string },
    constant: number | null,
    what: string,
  ): number => {
    const written = text(column);
    if (written !== "") {
      const read = readFigure(written, quantity, unit);
      if ("value" in read) return read.value;
      faults.push(cellFault(row, column ?? undefined, read.fault));
      return constant ?? 1;
    }
    if (constant === null)
      faults.push(
        cellFault(row, column ?? mapping.code, `${what} is not said: fill it in, or give a figure for all.`),
      );
    return constant ?? 1;
  };
  const current = (
    field: "running" | "standing" | "stall" | "inrush",
    what: string,
  ): Locomotive["running"] => {
    const given = mapping[field];
    const isBlank = text(given.column) === "";
    if (isBlank && before) return before[field];
    return {
      ma: Math.round(figure("current", given, given.constantMa, what)),
      // a figure that stands for all is nobody's measurement
      source: isBlank ? "rule of thumb" : given.source,
    };
  };
  const speed = text(mapping.maxSpeed.column);
  const keepsLength = before !== undefined && text(mapping.length.column) === "";
  const locomotive: Locomotive = {
    code,
    name: text(mapping.name) || (before?.name ?? code),
    lengthMm: keepsLength
      ? before.lengthMm
      : Math.round(figure("length", mapping.length, mapping.length.constantMm, "Its length")),
    running: current("running", "Its running current"),
    standing: current("standing", "Its standing current"),
    stall: current("stall", "Its stall current"),
    inrush: current("inrush", "Its inrush"),
    maxSpeedKmh:
      speed === "" ? (before?.maxSpeedKmh ?? null) : figure("speed", mapping.maxSpeed, null, "Its speed"),
    owner: text(mapping.owner) || (before?.owner ?? ""),
    note: text(mapping.note) || (before?.note ?? ""),
  };
  const read = readDecoder(text(mapping.address), code, (detail) =>
    faults.push(cellFault(row, mapping.address ?? undefined, detail)),
  );
  const fitted = stored.decoders.get(code);
  const decoder = read && fitted ? { ...fitted, addressKind: read.addressKind, address: read.address } : read;
  const columns = {
    code: mapping.code,
    name: mapping.name ?? mapping.code,
    lengthMm: mapping.length.column ?? undefined,
    running: mapping.running.column ?? undefined,
    standing: mapping.standing.column ?? undefined,
    stall: mapping.stall.column ?? undefined,
    inrush: mapping.inrush.column ?? undefined,
    maxSpeedKmh: mapping.maxSpeed.column ?? undefined,
    owner: mapping.owner ?? undefined,
    note: mapping.note ?? undefined,
    address: mapping.address ?? undefined,
  };
  return { locomotive, decoder, origin: { row, columns } satisfies Origin };
}

/** Short addresses are 1 to 127, long ones 128 to 10239 (NMRA S-9.2.1); a letter says which where a number could be both. */
function readDecoder(text: string, locomotive: string, refuse: (detail: string) => void): Decoder | null {
  if (text === "") return null;
  const [, before = "", digits = "", after = ""] = /^([sl]?)\s*(\d+)\s*([sl]?)$/i.exec(text) ?? [];
  const address = Number(digits);
  const letter = (before || after).toLowerCase();
  const isLong = letter === "l" || (letter === "" && address > 127);
  if (digits === "" || address < 1 || address > 10_239) {
    refuse(`${text} is no decoder address: write 1 to 10239, or leave it blank where there is no decoder.`);
    return null;
  }
  if (isLong && address < 128) {
    refuse(`A long address is 128 or more: ${text} is not.`);
    return null;
  }
  if (!isLong && address > 127) {
    refuse(`A short address is 127 at most: ${text} is more.`);
    return null;
  }
  return {
    code: `dec-${locomotive}`.slice(0, 40),
    locomotive,
    addressKind: isLong ? "long" : "short",
    address,
    analogAllowed: false,
    note: "",
  };
}
