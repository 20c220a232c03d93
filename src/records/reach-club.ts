import type { Database } from "../database/client.ts";
import { findClub } from "../database/records/clubs.ts";
import { type ClubScope, clubScope } from "../database/records/record-table.ts";
import { noClub } from "../http/actor.ts";
import type { Destination } from "./collection.ts";

/** @throws Refusal not-found */
export async function reachClub(database: Database, code: string): Promise<ClubScope> {
  const club = await findClub(database, code);
  if (club) return club;
  throw noClub(code);
}

/** The collections that lie right under a club. */
export const reachRecordsOf = async (database: Database, clubCode: string): Promise<Destination> => ({
  scope: clubScope(await reachClub(database, clubCode)),
});
