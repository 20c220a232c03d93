import type { Fault } from "../../../../shared/errors.ts";
import type { KeptFigure, RosterMapping } from "../../../../shared/mapped-import.ts";
import type { Locomotive } from "../../../../shared/roster.ts";
import { FIGURE_SOURCES, type FigureSource } from "../../../../shared/vocabulary.ts";
import { cellFault } from "../csv/errors.ts";
import { type Figure, type Quantity, readFigure, readWhole, unitOf, unitsOf } from "./read-figure.ts";
import type { DecimalMark } from "./read-number.ts";

/** A row of the sheet: what stands under a heading, without blanks around it. */
export interface Row {
  readonly row: number;
  readonly text: (heading: string | null) => string;
  readonly decimal: DecimalMark | null;
}

interface ReadLocomotive {
  readonly locomotive: Locomotive;
  readonly kept: readonly KeptFigure[];
  readonly faults: readonly Fault[];
}

/** A figure's unit: of the column, or of each row. */
type Measured = Pick<
  RosterMapping["running"] | RosterMapping["length"] | RosterMapping["maxSpeed"],
  "unit" | "unitColumn"
>;

type Current = KeptFigure["figure"];

const WORDS = {
  running: "running current",
  standing: "standing current",
  stall: "stall current",
  inrush: "inrush",
} as const satisfies Record<Current, string>;

/** A locomotive from a row, over what is stored of it. With faults, its figures are good for nothing. */
export function readLocomotive(
  { row, text, decimal }: Row,
  mapping: RosterMapping,
  stored: ReadonlyMap<string, Locomotive>,
): ReadLocomotive {
  const faults: Fault[] = [];
  const kept: KeptFigure[] = [];
  const code = text(mapping.code).replaceAll(/[\s/]+/g, "-");
  const before = stored.get(code);
  const take = (column: string | null, read: Figure): number => {
    if ("value" in read) return read.value;
    faults.push(cellFault(row, column ?? mapping.code, read.fault));
    return 1;
  };
  const unitAt = (quantity: Quantity, { unit, unitColumn }: Measured): string => {
    const word = text(unitColumn ?? null);
    const named = word === "" ? unit : unitOf(quantity, word);
    if (named === undefined)
      faults.push(
        cellFault(
          row,
          unitColumn ?? undefined,
          `${word} is no unit of a ${quantity}: write ${unitsOf(quantity)}.`,
        ),
      );
    return named ?? unit;
  };
  const constant = (value: number | null, what: string): Figure =>
    value === null ? { fault: `${what} is not said: fill it in, or give a figure for all.` } : { value };

  const length = (): number => {
    const { column, constantMm } = mapping.length;
    const written = text(column);
    if (written === "") return before?.lengthMm ?? take(column, constant(constantMm, "Its length"));
    return take(column, readWhole(written, "length", unitAt("length", mapping.length), decimal));
  };
  const current = (figure: Current): Locomotive["running"] => {
    const { column, constantMa, source } = mapping[figure];
    const written = text(column);
    if (written === "")
      // a figure that stands for all is nobody's measurement
      return (
        before?.[figure] ?? {
          ma: take(column, constant(constantMa, `Its ${WORDS[figure]}`)),
          source: "rule of thumb",
        }
      );
    const unit = unitAt("current", mapping[figure]);
    const given = { ma: take(column, readWhole(written, "current", unit, decimal)), source };
    const had = before?.[figure];
    if (had === undefined || !isSurer(had.source, source)) return given;
    if (had.ma !== given.ma) kept.push(toKept(row, column ?? mapping.code, code, figure, had, given));
    return had;
  };
  const speed = (): number | null => {
    const { column } = mapping.maxSpeed;
    const written = text(column);
    return written === ""
      ? (before?.maxSpeedKmh ?? null)
      : take(column, readFigure(written, "speed", unitAt("speed", mapping.maxSpeed), decimal));
  };
  const locomotive: Locomotive = {
    code,
    name: text(mapping.name) || (before?.name ?? code),
    lengthMm: length(),
    running: current("running"),
    standing: current("standing"),
    stall: current("stall"),
    inrush: current("inrush"),
    maxSpeedKmh: speed(),
    owner: text(mapping.owner) || (before?.owner ?? ""),
    note: text(mapping.note) || (before?.note ?? ""),
  };
  return { locomotive, kept, faults };
}

const isSurer = (one: FigureSource, other: FigureSource) =>
  FIGURE_SOURCES.indexOf(one) < FIGURE_SOURCES.indexOf(other);

const FROM = {
  measured: "measured",
  leaflet: "from a leaflet",
  "rule of thumb": "a rule of thumb",
} as const satisfies Record<FigureSource, string>;

function toKept(
  row: number,
  column: string,
  locomotive: string,
  figure: Current,
  had: Locomotive["running"],
  given: Locomotive["running"],
): KeptFigure {
  return {
    ...{ row, column, locomotive, figure },
    sentence: `Locomotive ${locomotive} keeps its ${WORDS[figure]} of ${had.ma} mA, which is ${FROM[had.source]}: the sheet's ${given.ma} mA would be ${FROM[given.source]}. If it is surer than that, say where the column is from.`,
  };
}
