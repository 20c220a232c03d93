import { toInstant } from "../nights/zoned-time.ts";

/** What the address of a trail's page holds; days as `2026-11-25`, empty where nothing was chosen. */
export interface TrailAddress {
  readonly kind: string;
  readonly code: string;
  readonly person: string;
  readonly from: string;
  readonly to: string;
}

export const WHOLE_TRAIL: TrailAddress = { kind: "", code: "", person: "", from: "", to: "" };

const FIELDS = Object.keys(WHOLE_TRAIL) as (keyof TrailAddress)[];
const DAY = /^\d{4}-\d\d-\d\d$/;

export function readTrailAddress(search: string): TrailAddress {
  const query = new URLSearchParams(search);
  const address = Object.fromEntries(FIELDS.map((field) => [field, query.get(field) ?? ""]));
  const { from = "", to = "" } = address;
  return { ...WHOLE_TRAIL, ...address, from: DAY.test(from) ? from : "", to: DAY.test(to) ? to : "" };
}

/** The query of an address, empty for the whole trail. */
export function writeTrailAddress(address: TrailAddress): string {
  const said = FIELDS.filter((field) => address[field] !== "").map((field) => [field, address[field]]);
  return said.length === 0 ? "" : `?${new URLSearchParams(said)}`;
}

const DAY_MS = 86_400_000;

/** Midnight at the begin of a day by the clocks of `timeZone`, as an instant in UTC; empty stays empty. */
export const dayBegins = (day: string, timeZone: string) =>
  day === "" ? "" : toInstant(`${day}T00:00`, timeZone);

/** Midnight at its end: the first instant that is no longer of that day. */
export function dayEnds(day: string, timeZone: string): string {
  if (day === "") return "";
  const next = new Date(Date.parse(`${day}T00:00Z`) + DAY_MS).toISOString().slice(0, 10);
  return dayBegins(next, timeZone);
}
