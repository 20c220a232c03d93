import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { decoderKind, locomotiveKind, rakeKind } from "./kinds.ts";

/** What runs on the railway, each kind after those that it refers to. */
export const rosterKinds = [locomotiveKind, decoderKind, rakeKind] as const satisfies readonly RecordKind[];

/** The records of the roster. */
export function installRoster(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "roster", rosterKinds);
}
