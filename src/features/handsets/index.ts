import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { handsetKind } from "./kinds.ts";

export { handsetKind };

/** The club's handsets. */
export function installHandsets(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "handsets", [handsetKind]);
}
