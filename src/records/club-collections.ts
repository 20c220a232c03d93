import { code } from "../../shared/units.ts";
import type { DatabaseClient } from "../database/client.ts";
import type { HttpApp } from "../http/bare-app.ts";
import { installCollection } from "./collection-routes.ts";
import { reachRecordsOf } from "./reach-club.ts";
import type { RecordKind } from "./record-kind.ts";

/** Collections that lie right under a club, with one heading on the API's reference page. */
export function installClubCollections(
  app: HttpApp,
  database: DatabaseClient,
  tag: string,
  kinds: readonly RecordKind[],
): void {
  for (const kind of kinds)
    installCollection(app, database, kind, {
      under: "/api/clubs/:club",
      params: { club: code },
      tag,
      resolve: ({ club = "" }) => reachRecordsOf(database, club),
    });
}
