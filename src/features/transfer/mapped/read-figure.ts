/** What one of each unit is in ours: mm, mA, km/h. The inch is 25.4 mm and the mile 1.609344 km (1959 definitions, from memory). */
export const IN_OUR_UNITS = {
  length: { mm: 1, cm: 10, m: 1_000, in: 25.4 },
  current: { mA: 1, A: 1_000 },
  speed: { "km/h": 1, mph: 1.609344 },
} as const;

export type Quantity = keyof typeof IN_OUR_UNITS;

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

/**
 * A cell as a number in our units, `unit` being that of a cell that names none. A comma is a decimal comma, unless a point
 * stands too: then the last of the two is. `1,250` could be either and is refused.
 */
export function readFigure(text: string, quantity: Quantity, unit: string): Figure {
  const [, digits = "", word = ""] = /^([\d.,'\u2019\s\u00a0\u202f]*)\s*(\D*)$/u.exec(text.trim()) ?? [];
  const named = word.trim() === "" ? unit : unitOf(quantity, word.trim());
  if (digits.trim() === "") return { fault: `${text} is no number: write a figure.` };
  if (named === undefined) return { fault: `${word.trim()} is no unit that is known here.` };
  const number = readNumber(digits.replaceAll(/['\u2019\s\u00a0\u202f]/gu, ""));
  if (typeof number === "string") return { fault: number };
  const factor = (IN_OUR_UNITS[quantity] as Readonly<Record<string, number>>)[named] ?? 1;
  // binary fractions of an inch would else show
  return { value: Math.round(number * factor * 1e6) / 1e6 };
}

function readNumber(text: string): number | string {
  const [points, commas] = [text.split(".").length - 1, text.split(",").length - 1];
  let plain = text;
  if (points > 0 && commas > 0) {
    const decimal = text.lastIndexOf(",") > text.lastIndexOf(".") ? "," : ".";
    plain = text.replaceAll(decimal === "," ? "." : ",", "").replace(decimal, ".");
  } else if (commas === 1) {
    if (/^[1-9]\d{0,2},\d{3}$/.test(text))
      return `${text} could be ${text.replace(",", "")} or ${Number(text.replace(",", "."))}: write it without the comma, or with a point.`;
    plain = text.replace(",", ".");
  } else if (commas > 1 && /^\d{1,3}(,\d{3})+$/.test(text)) plain = text.replaceAll(",", "");
  else if (points > 1 && /^\d{1,3}(\.\d{3})+$/.test(text)) plain = text.replaceAll(".", "");
  return /^\d+(\.\d+)?$|^\.\d+$/.test(plain) ? Number(plain) : `${text} is no number: write a figure.`;
}
