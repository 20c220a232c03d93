import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import type { Destination } from "../../records/collection.ts";
import { installCollection } from "../../records/collection-routes.ts";
import { clubKind } from "./kinds.ts";

// clubs themselves belong to none
const EVERYWHERE: Destination = { scope: { club: { id: "", code: "", timeZone: "UTC" }, columns: {} } };

/** The clubs that this service keeps. */
export function installClubs(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installCollection(app, database, clubKind, {
    under: "/api",
    params: {},
    tag: "clubs",
    resolve: async () => EVERYWHERE,
  });
}
