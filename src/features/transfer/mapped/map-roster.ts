import type { Fault } from "../../../../shared/errors.ts";
import type { KeptFigure, RosterMapping } from "../../../../shared/mapped-import.ts";
import type { Decoder, Locomotive } from "../../../../shared/roster.ts";
import { cellFault, wrongWidth } from "../csv/errors.ts";
import type { Sheet } from "../csv/sheet.ts";
import { freeCode } from "./free-code.ts";
import { readAddress, toDecoder } from "./map-decoder.ts";
import { readLocomotive } from "./map-locomotive.ts";
import { splitFigure } from "./read-figure.ts";
import { settleDecimalMark } from "./read-number.ts";

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
  /** Figures that stay, although the sheet has others. */
  readonly kept: readonly KeptFigure[];
  readonly faults: readonly Fault[];
}

/** What a club has already. */
export interface StoredRoster {
  readonly locomotives: ReadonlyMap<string, Locomotive>;
  /** By the locomotive they are in. */
  readonly decoders: ReadonlyMap<string, Decoder>;
  /** Of all decoders, those that are in none too. */
  readonly decoderCodes: ReadonlySet<string>;
}

const NOTHING_STORED: StoredRoster = {
  locomotives: new Map(),
  decoders: new Map(),
  decoderCodes: new Set(),
};

/**
 * Locomotives and their decoders from somebody's sheet, or every cell that cannot be read. Blank rows are passed over. What a
 * sheet says nothing of stays as `stored` has it, and so does a figure from a surer source; a figure that stands for all is for
 * locomotives without one. A decoder keeps its code and a new one takes a code that is free.
 */
export function mapRoster(sheet: Sheet, mapping: RosterMapping, stored = NOTHING_STORED): MappedRoster {
  const [headings = [], ...rows] = sheet;
  const faults = [...findHeadingFaults(headings, mapping), ...findWidthFaults(headings.length, rows)];
  const nothing = { locomotives: [], decoders: [], origins: [], decoderOrigins: [], kept: [] };
  if (faults.length > 0) return { ...nothing, faults };
  const columns = headingsOf(mapping);
  const filled = rows
    .map((cells, at) => ({
      row: at + 2,
      text: (heading: string | null) =>
        heading === null ? "" : (cells[headings.indexOf(heading)] ?? "").trim(),
      isBlank: cells.every((cell) => cell.trim() === ""),
    }))
    .filter(({ isBlank }) => !isBlank);
  const decimal = settleDecimalMark(
    filled.flatMap(({ text }) => figureColumns(mapping).map((heading) => splitFigure(text(heading)).digits)),
  );
  const taken = new Set(stored.decoderCodes);
  const found = filled.map(({ row, text }) => {
    const origin: Origin = { row, columns };
    const read = readLocomotive({ row, text, decimal }, mapping, stored.locomotives);
    faults.push(...read.faults);
    const { code } = read.locomotive;
    const written = text(mapping.address);
    const address = written === "" ? null : readAddress(written);
    if (address !== null && "fault" in address)
      faults.push(cellFault(row, mapping.address ?? undefined, address.fault));
    if (address === null || "fault" in address) return { ...read, decoder: null, origin };
    const fitted = stored.decoders.get(code);
    const decoder = toDecoder(code, address, fitted, freeCode(`dec-${code}`, taken));
    taken.add(decoder.code);
    return { ...read, decoder, origin };
  });
  return {
    locomotives: found.map(({ locomotive }) => locomotive),
    decoders: found.flatMap(({ decoder }) => decoder ?? []),
    origins: found.map(({ origin }) => origin),
    decoderOrigins: found.flatMap(({ decoder, origin }) => (decoder ? [origin] : [])),
    kept: found.flatMap(({ kept }) => kept),
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

const figuresOf = ({ length, running, standing, stall, inrush, maxSpeed }: RosterMapping) => [
  length,
  running,
  standing,
  stall,
  inrush,
  maxSpeed,
];

const figureColumns = (mapping: RosterMapping): string[] =>
  figuresOf(mapping).flatMap(({ column }) => column ?? []);

const columnsOf = (mapping: RosterMapping): string[] => [
  mapping.code,
  ...[mapping.name, mapping.address, mapping.owner, mapping.note].filter((heading) => heading !== null),
  ...figureColumns(mapping),
  ...figuresOf(mapping).flatMap(({ unitColumn }) => unitColumn ?? []),
];

const headingsOf = (mapping: RosterMapping): Origin["columns"] => ({
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
});
