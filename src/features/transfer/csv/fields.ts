import type { Column } from "./columns.ts";

/** A record while it is put together from cells. */
export type Draft = Record<string, unknown>;

/** The value at a column's path, undefined where there is none. */
export function fieldOf(record: object, { path }: Pick<Column, "path">): unknown {
  let value: unknown = record;
  for (const step of path) value = (value as Readonly<Record<string, unknown>> | undefined)?.[step];
  return value;
}

/**
 * Sets the value at a column's path; undefined leaves the field out. What a required column belongs to is made all the same, so
 * that a blank cell is told of as the cell it is.
 */
export function setField(draft: Draft, { path, required }: Column, value: unknown): void {
  if (value === undefined && !required) return;
  const [last = "", ...before] = path.toReversed();
  let holder = draft;
  for (const step of before.reverse()) {
    holder[step] ??= {};
    holder = holder[step] as Draft;
  }
  holder[last] = value;
}

/** The column whose field a place in the record lies in or above, undefined for the record as a whole. */
export function columnAt(
  columns: readonly Column[],
  path: readonly (string | number | symbol)[],
): string | undefined {
  const matches = ({ path: own }: Column) => {
    const shared = Math.min(own.length, path.length);
    return shared > 0 && own.slice(0, shared).every((step, at) => step === path[at]);
  };
  return columns.find(matches)?.name;
}
