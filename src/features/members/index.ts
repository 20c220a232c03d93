import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { memberKind } from "./kinds.ts";

export { memberKind };

/** The club's members. */
export function installMembers(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "members", [memberKind]);
}
