import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";

/** What the address of a plan holds: the chosen finding, the moment, the window; each only where it was chosen. */
export interface PlanAddress {
  readonly finding: string | null;
  /** Layout seconds. */
  readonly at: number | null;
  readonly from: number | null;
  readonly to: number | null;
}

const LAYOUT_TIME = /^\d{1,3}:[0-5]\d(:[0-5]\d)?$/;

function readTime(text: string | null): number | null {
  return text !== null && LAYOUT_TIME.test(text) ? parseLayoutTime(text) : null;
}

/** Reads an address; what cannot be read is taken as not chosen, so that an old link still opens the plan. */
export function readAddress(search: string): PlanAddress {
  const query = new URLSearchParams(search);
  const from = readTime(query.get("from"));
  const to = readTime(query.get("to"));
  const isWindow = from !== null && to !== null && from < to;
  return {
    finding: query.get("finding"),
    at: readTime(query.get("at")),
    from: isWindow ? from : null,
    to: isWindow ? to : null,
  };
}

/** The address as a query with its question mark; empty where nothing was chosen. */
export function toSearch(address: PlanAddress): string {
  const parts: string[] = [];
  if (address.finding !== null) parts.push(`finding=${encodeURIComponent(address.finding)}`);
  for (const name of ["at", "from", "to"] as const) {
    const seconds = address[name];
    if (seconds !== null) parts.push(`${name}=${toLayoutTimeText(seconds)}`);
  }
  return parts.length === 0 ? "" : `?${parts.join("&")}`;
}
