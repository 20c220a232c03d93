import type { RosterMapping, SuggestedMapping } from "../../../../shared/mapped-import.ts";
import type { Sheet } from "../csv/sheet.ts";
import { type Quantity, readFigure, splitFigure, unitOf } from "./read-figure.ts";
import { type DecimalMark, settleDecimalMark } from "./read-number.ts";

/** Words that headings say for each thing, likeliest first. */
const WORDS = {
  code: [
    "number",
    "no",
    "nr",
    "running number",
    "road number",
    "fleet",
    "code",
    "id",
    "loco",
    "locomotive",
    "engine",
  ],
  name: ["name", "description", "title", "model", "class"],
  length: ["length", "long", "over buffers"],
  running: ["running", "run current", "run", "moving", "amps", "current", "draw"],
  standing: ["standing", "stand", "idle", "stationary", "stopped", "quiescent", "sound"],
  stall: ["stall", "stalled", "slip"],
  inrush: ["inrush", "surge", "start"],
  maxSpeed: ["max speed", "top speed", "speed", "vmax", "top"],
  address: ["address", "decoder", "dcc"],
  owner: ["owner", "whose", "belongs"],
  note: ["note", "notes", "remark", "remarks", "comment", "comments"],
} as const;

const SAMPLES = 5;

/** What the columns of a sheet look like they hold. Each column is taken once; units stand in headings, in
 * cells, or in a column beside. */
export function suggestMapping(sheet: Sheet): SuggestedMapping {
  const [headings = [], ...rows] = sheet;
  const filled = rows.filter((row) => row.some((cell) => cell.trim() !== ""));
  const taken = new Set<number>();
  const find = (thing: keyof typeof WORDS): string | null => {
    for (const word of WORDS[thing]) {
      const at = headings.findIndex((heading, i) => !taken.has(i) && says(heading, word));
      if (at < 0) continue;
      taken.add(at);
      return headings[at] ?? null;
    }
    return null;
  };
  const unit = (quantity: Quantity, heading: string | null, usual: string) =>
    heading === null
      ? usual
      : (unitIn(quantity, heading) ??
        guessed(
          quantity,
          filled.map((row) => row[headings.indexOf(heading)] ?? ""),
          decimal,
          usual,
        ));
  // what has words of its own goes first, so that `stall amps` is not taken for running
  const [stall, standing, inrush] = [find("stall"), find("standing"), find("inrush")];
  const [length, maxSpeed, address] = [find("length"), find("maxSpeed"), find("address")];
  const [owner, note, running] = [find("owner"), find("note"), find("running")];
  const [code, name] = [find("code"), find("name")];
  const number = code ?? headings[0] ?? null;
  const decimal = settleDecimalMark(
    [stall, standing, inrush, length, maxSpeed, running].flatMap((heading) =>
      heading === null ? [] : filled.map((row) => splitFigure(row[headings.indexOf(heading)] ?? "").digits),
    ),
  );
  // units stand beside their figures, in a column of nothing else
  const unitColumn = (quantity: Quantity, heading: string | null): string | null => {
    const at = heading === null ? -1 : headings.indexOf(heading) + 1;
    const cells = filled.map((row) => (row[at] ?? "").trim()).filter((cell) => cell !== "");
    const isOfUnits = cells.length > 0 && cells.every((cell) => unitOf(quantity, cell) !== undefined);
    return at > 0 && isOfUnits ? (headings[at] ?? null) : null;
  };
  const current = (heading: string | null): RosterMapping["running"] => ({
    column: heading,
    unitColumn: unitColumn("current", heading),
    unit: unit("current", heading, "mA") as RosterMapping["running"]["unit"],
    constantMa: null,
    source: "rule of thumb",
  });
  return {
    headings: [...headings],
    rows: filled.length,
    samples: filled.slice(0, SAMPLES).map((row) => [...row]),
    mapping:
      number === null || number === ""
        ? null
        : {
            code: number,
            name,
            length: {
              column: length,
              unitColumn: unitColumn("length", length),
              unit: unit("length", length, "mm") as RosterMapping["length"]["unit"],
              constantMm: null,
            },
            running: current(running),
            standing: current(standing),
            stall: current(stall),
            inrush: current(inrush),
            maxSpeed: {
              column: maxSpeed,
              unitColumn: unitColumn("speed", maxSpeed),
              unit: unit("speed", maxSpeed, "km/h") as RosterMapping["maxSpeed"]["unit"],
            },
            address,
            owner,
            note,
          },
  };
}

const wordsOf = (heading: string) => heading.toLowerCase().split(/[^\p{L}\p{N}/"]+/u);

function says(heading: string, phrase: string): boolean {
  return ` ${wordsOf(heading).join(" ")} `.includes(` ${phrase} `);
}

/** `Length (cm)`, `stall amps`. */
function unitIn(quantity: Quantity, heading: string): string | undefined {
  return wordsOf(heading)
    .map((word) => unitOf(quantity, word))
    .find((unit) => unit !== undefined);
}

/** Where nothing names a unit: currents below 20 are amps, lengths below 100 centimetres. */
function guessed(
  quantity: Quantity,
  cells: readonly string[],
  decimal: DecimalMark | null,
  usual: string,
): string {
  const figures = cells.flatMap((cell) => {
    const read = readFigure(cell, quantity, usual, decimal);
    return "value" in read ? [read.value] : [];
  });
  if (figures.length === 0) return usual;
  const most = Math.max(...figures);
  if (quantity === "current" && most < 20) return "A";
  if (quantity === "length" && most < 100) return "cm";
  return usual;
}
