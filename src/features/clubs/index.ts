import type { Club } from "../../../shared/clubs.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { createCollection, type Destination } from "../../records/collection.ts";
import { installCollection } from "../../records/collection-routes.ts";
import { clubKind } from "./kinds.ts";

// clubs themselves belong to none
const EVERYWHERE: Destination = { scope: { club: { id: "", code: "", timeZone: "UTC" }, columns: {} } };

/** Makes clubs without a request, as a start does that brings one along. */
export function createClub(database: DatabaseClient, club: Club): Promise<unknown> {
  return createCollection(database, clubKind).create(EVERYWHERE, club);
}

/** The clubs that this service keeps. */
export function installClubs(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installCollection(app, database, clubKind, {
    under: "/api",
    params: {},
    tag: "clubs",
    access: "signed-in",
    resolve: async () => EVERYWHERE,
  });
}
