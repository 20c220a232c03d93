import { read } from "./ask.ts";
import { clubPath, type ListPage } from "./service.ts";

/** What can be done to a record. */
export const DEEDS = ["made", "changed", "removed"] as const;
export type Deed = (typeof DEEDS)[number];

/** One change of one record. */
export interface TrailEntry {
  readonly seq: number;
  readonly at: string;
  /** Who did it; null for the service itself, and for someone who was erased since. */
  readonly person: { readonly id: string; readonly name: string } | null;
  readonly kind: string;
  readonly code: string;
  readonly deed: Deed;
  /** Fields that changed, as they were and as they are; null where there was or is no record. */
  readonly before: Fields | null;
  readonly after: Fields | null;
}

export type Fields = Readonly<Record<string, unknown>>;

/** Which part of a trail; empty is all of it. Instants are UTC. */
export interface TrailFilter {
  readonly kind: string;
  readonly code: string;
  readonly person: string;
  readonly from: string;
  readonly to: string;
}

/** A page of the trail, latest first. */
export function listTrail(
  club: string,
  filter: TrailFilter,
  cursor: string | null,
  signal: AbortSignal,
): Promise<ListPage<TrailEntry>> {
  const asked = Object.entries({ ...filter, cursor: cursor ?? "" }).filter(([, value]) => value !== "");
  const query = new URLSearchParams(asked).toString();
  return read(`${clubPath(club)}/trail${query && `?${query}`}`, signal);
}
