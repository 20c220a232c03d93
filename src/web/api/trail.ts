import type { TrailEntry } from "../../../shared/trail.ts";
import { read } from "./ask.ts";
import { clubPath, type ListPage } from "./service.ts";

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
