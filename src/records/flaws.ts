import type { Fault, RefusalCode } from "../../shared/errors.ts";
import { toPointer } from "../http/validator.ts";
import { Refusal } from "../lib/refusal.ts";

/** Something in a record that cannot be: where in its body, and what to do about it. */
export interface Flaw {
  readonly path: readonly (string | number)[];
  readonly detail: string;
}

export const toFaults = (flaws: readonly Flaw[]): Fault[] =>
  flaws.map(({ path, detail }) => ({ pointer: toPointer(["body", ...path]), detail }));

/**
 * Returns when there is no flaw.
 * @throws Refusal of the given code that lists every flaw
 */
export function refuseFlaws(code: RefusalCode, flaws: readonly Flaw[]): void {
  const [first] = flaws;
  if (first) throw new Refusal(code, first.detail, toFaults(flaws));
}

// PostgreSQL stores no NUL, and UTF-8 has no form for half of a surrogate pair
const UNSTORABLE = /[\0\p{Surrogate}]/u;

/** Texts anywhere in a body that cannot be stored as they are. */
export function findUnstorableText(value: unknown, path: Flaw["path"] = []): Flaw[] {
  if (typeof value === "string")
    return UNSTORABLE.test(value)
      ? [{ path, detail: "Holds a character that is no text (NUL or half of a pair): take it out." }]
      : [];
  if (Array.isArray(value)) return value.flatMap((each, at) => findUnstorableText(each, [...path, at]));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => findUnstorableText(each, [...path, key]));
}

/** Entries of a list that stand in it a second time: the position and the entry of each. */
export function findRepeated<T>(list: readonly T[]): { readonly at: number; readonly entry: T }[] {
  const seen = new Set<T>();
  return list.flatMap((entry, at) => {
    if (seen.has(entry)) return [{ at, entry }];
    seen.add(entry);
    return [];
  });
}
