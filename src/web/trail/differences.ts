import type { TrailEntry } from "../../../shared/trail.ts";
import { dayAndTime } from "../shell/instant.ts";

/** One field that changed, in words; null where it had or has no value. */
export interface Difference {
  readonly field: string;
  readonly was: string | null;
  readonly is: string | null;
  /** What it was and is stays unsaid: a secret, or something about a person. */
  readonly isWithheld: boolean;
}

/** Longer values are cut: the trail says what changed, the record what it is. */
const MOST_LETTERS = 160;

/** What an entry changed, field by field in the order of their names; instants by the clocks of `timeZone`. */
export const differences = (changes: TrailEntry["changes"], timeZone: string): readonly Difference[] =>
  changes
    .map(({ field, from, to, withheld }) => ({
      field: fieldWords(field),
      was: valueWords(from, timeZone),
      is: valueWords(to, timeZone),
      isWithheld: withheld,
    }))
    .filter(({ was, is, isWithheld }) => isWithheld || was !== is)
    .sort((a, b) => (a.field < b.field ? -1 : 1));

const UNITS: Readonly<Record<string, string>> = { ma: "mA", mm: "mm", ms: "ms", kmh: "km/h", seconds: "s" };

/** `passedFor` and `passed_for` as people read them, `passed for`; a unit at the end as such: `breaker, mA`. */
export function fieldWords(field: string): string {
  const words = field
    .replace(/[_-]/g, " ")
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .toLowerCase();
  return words.replace(/ (\w+)$/, (end, last: string) => (UNITS[last] ? `, ${UNITS[last]}` : end));
}

/** A value in words; null for none. */
export function valueWords(value: unknown, timeZone: string): string | null {
  if (value === undefined || value === null || value === "") return null;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value))
    return value.length === 0 ? null : cut(value.map((item) => itemWords(item, timeZone)).join(", "));
  return cut(itemWords(value, timeZone));
}

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/;

function itemWords(value: unknown, timeZone: string): string {
  if (typeof value === "string" && INSTANT.test(value)) return dayAndTime(value, timeZone);
  if (typeof value !== "object" || value === null) return String(value);
  const parts = Object.entries(value)
    .filter(([, part]) => part !== null && part !== "")
    .map(([name, part]) => `${fieldWords(name)} ${itemWords(part, timeZone)}`);
  return parts.join(" ");
}

const cut = (text: string) => (text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)} …` : text);
