import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { registerWiringRoutes } from "./routes.ts";
import { createWiringService, type WiringDeps } from "./service.ts";
import { createWiringStore } from "./store.ts";

/** Whether the power districts are wired for what their trains draw. */
export function installWiring(app: HttpApp, deps: WiringDeps & { readonly database: DatabaseClient }): void {
  registerWiringRoutes(app, createWiringService(createWiringStore(deps.database), deps));
}
