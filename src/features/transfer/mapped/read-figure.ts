import { type DecimalMark, readNumber } from "./read-number.ts";

/** What one of each unit is in ours: mm, mA, km/h. The inch is 25.4 mm and the mile 1.609344 km (1959 definitions, from memory). */
export const IN_OUR_UNITS = {
  length: { mm: 1, cm: 10, m: 1_000, in: 25.4 },
  current: { mA: 1, A: 1_000 },
  speed: { "km/h": 1, mph: 1.609344 },
} as const;

export type Quantity = keyof typeof IN_OUR_UNITS;

/** Units in which people count whole ones, into the thousands. */
const WHOLE_UNITS: ReadonlySet<string> = new Set(["mm", "mA"]);

/** A figure with a fraction must be above this to be rounded to a whole mm or mA: less is lost, or was meant in another unit. */
const LEAST_ROUNDED = 10;

/** Other ways in which people write the units. */
const SPELLINGS: Readonly<Record<string, string>> = {
  mm: "mm",
  millimetres: "mm",
  cm: "cm",
  m: "m",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  ma: "mA",
  milliamps: "mA",
  a: "A",
  amp: "A",
  amps: "A",
  "km/h": "km/h",
  kmh: "km/h",
  kph: "km/h",
  mph: "mph",
};

export type Figure = { readonly value: number } | { readonly fault: string };

/** The unit that a word means for a quantity; undefined where it means none. */
export function unitOf(quantity: Quantity, word: string): string | undefined {
  const unit = SPELLINGS[word.toLowerCase()];
  return unit !== undefined && unit in IN_OUR_UNITS[quantity] ? unit : undefined;
}

/** The units of a quantity as one reads them: `mm, cm, m or in`. */
export function unitsOf(quantity: Quantity): string {
  const units = Object.keys(IN_OUR_UNITS[quantity]);
  return `${units.slice(0, -1).join(", ")} or ${units.at(-1)}`;
}

/** A cell's figure and the word behind it. */
export function splitFigure(text: string): { readonly digits: string; readonly word: string } {
  const [, digits = "", word = ""] = /^([\d.,'\u2019\s\u00a0\u202f]*)(\D*)$/u.exec(text.trim()) ?? [];
  return { digits: digits.trim(), word: word.trim() };
}

/**
 * A cell as a number in our units, `unit` being that of a cell that names none. `1,250` could be a thousand and more, or one
 * and a quarter: `decimal`, the mark that the rest of the sheet has, decides. Where nothing does it is refused, and so is
 * `1.250` of a unit that is counted in whole ones.
 */
export function readFigure(
  text: string,
  quantity: Quantity,
  unit: string,
  decimal: DecimalMark | null = null,
): Figure {
  const { digits, word } = splitFigure(text);
  const named = word === "" ? unit : unitOf(quantity, word);
  if (/^\s*[-\u2212]\s*\d/u.test(text)) return { fault: `${text} is below 0: write a figure above it.` };
  if (digits === "") return { fault: `${text} is no number: write a figure.` };
  if (named === undefined)
    return { fault: `${word} is no unit of a ${quantity}: write ${unitsOf(quantity)}.` };
  const read = readNumber(digits);
  if (read === null) return { fault: `${digits} is no number: write a figure.` };
  const factor = (IN_OUR_UNITS[quantity] as Readonly<Record<string, number>>)[named] ?? 1;
  // binary fractions of an inch would else show
  const inOurs = (value: number): Figure => ({ value: Math.round(value * factor * 1e6) / 1e6 });
  if ("value" in read) return inOurs(read.value);
  const { mark, asFraction, asThousands } = read;
  if (decimal !== null) return inOurs(mark === decimal ? asFraction : asThousands);
  if (mark === "." && !WHOLE_UNITS.has(named)) return inOurs(asFraction);
  const plain = WHOLE_UNITS.has(named) ? "" : ", or with a point";
  return {
    fault: `${digits} could be ${asThousands} or ${asFraction}: write it without the ${mark === "," ? "comma" : "point"}${plain}.`,
  };
}

/** As `readFigure`, in whole mm or mA; refused where nothing would be left of it. */
export function readWhole(
  text: string,
  quantity: "length" | "current",
  unit: string,
  decimal: DecimalMark | null,
): Figure {
  const read = readFigure(text, quantity, unit, decimal);
  if ("fault" in read || Number.isInteger(read.value)) return read;
  if (read.value >= LEAST_ROUNDED) return { value: Math.round(read.value) };
  const ours = quantity === "length" ? "mm" : "mA";
  return {
    fault: `${text} comes to ${read.value} ${ours}, and whole ${ours} are kept: is its unit right? If so, write a whole number of ${ours}.`,
  };
}
