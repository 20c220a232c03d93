import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { sessionKind } from "./kinds.ts";

export { sessionKind };

/** The club's operating sessions. */
export function installSessions(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "sessions", [sessionKind]);
}
