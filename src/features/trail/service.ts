import type { TrailEntry } from "../../../shared/trail.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import { reachClub } from "../../records/reach-club.ts";
import { toEntry } from "./mapper.ts";
import { readDoers, readTrail, type TrailFilter } from "./store.ts";

/** Rows of a page, and how each is told. */
export interface TrailPage {
  readonly rows: readonly rows.TrailEntry[];
  readonly present: (row: rows.TrailEntry) => TrailEntry;
}

export type TrailService = ReturnType<typeof createTrailService>;

export function createTrailService(database: DatabaseClient) {
  return {
    /** @throws Refusal not-found */
    async read(
      clubCode: string,
      filter: TrailFilter,
      page: { readonly before: number | undefined; readonly limit: number },
    ): Promise<TrailPage> {
      const club = await reachClub(database, clubCode);
      const rows = await readTrail(database, club.id, filter, page);
      const ids = new Set(rows.flatMap(({ personId }) => personId ?? []));
      const doers = ids.size === 0 ? new Map() : await readDoers(database, club.id, [...ids]);
      return { rows, present: (row) => toEntry(row, doers) };
    },
  };
}
