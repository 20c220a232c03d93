import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { TrailEntry } from "../../../shared/trail.ts";
import type * as rows from "../../database/generated/client.ts";
import type { Doer } from "./store.ts";

type Json = TrailEntry["changes"][number]["from"];
type Fields = Readonly<Record<string, Json>>;

export function toEntry(row: rows.TrailEntry, doers: ReadonlyMap<string, Doer>): TrailEntry {
  const { personId } = row;
  const doer = personId === null ? undefined : doers.get(personId);
  return {
    seq: Number(row.seq),
    at: row.at.toISOString(),
    by:
      personId === null ? null : { person: personId, member: doer?.member ?? null, name: doer?.name ?? null },
    kind: row.kind as TrailEntry["kind"],
    code: row.code,
    deed: row.deed as TrailEntry["deed"],
    session: row.sessionCode,
    slot: row.slotCode,
    timetableVersion: row.versionName,
    changes: toChanges((row.was ?? {}) as Fields, (row.became ?? {}) as Fields, row.withheld),
  };
}

function toChanges(was: Fields, became: Fields, withheld: readonly string[]): TrailEntry["changes"] {
  const columns = [...new Set([...Object.keys(was), ...Object.keys(became), ...withheld])].sort();
  return columns.map((column) => ({
    field: toField(column),
    from: toValue(column, was[column]),
    to: toValue(column, became[column]),
    withheld: withheld.includes(column),
  }));
}

// the schema names a reference after what it refers to, and a layout time after its unit
const toField = (column: string) =>
  column.replace(/(?<=.)_(?:code|s)$/, "").replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());

function toValue(column: string, value: Json | undefined): Json {
  if (value === undefined) return null;
  if (Array.isArray(value)) return value.map((item) => (isObject(item) ? toPart(item) : item));
  return column.endsWith("_s") && typeof value === "number" ? toLayoutTimeText(value) : value;
}

const toPart = (part: Fields): { [field: string]: Json } =>
  Object.fromEntries(
    Object.entries(part).map(([column, value]) => [toField(column), toValue(column, value)]),
  );

const isObject = (value: Json): value is { [field: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);
