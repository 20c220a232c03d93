import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerTrailRoutes } from "./routes.ts";
import { createTrailService } from "./service.ts";

/** Who changed what, when, from what to what. */
export function installTrail(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  registerTrailRoutes(app, createTrailService(database));
}
