import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { readingKind } from "./kinds.ts";

export { readingKind };

/** What meters showed, and what follows from it. */
export function installReadings(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "readings", [readingKind]);
}
