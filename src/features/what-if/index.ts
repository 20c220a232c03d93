import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { registerWhatIfRoutes } from "./routes.ts";
import { createWhatIfService, type WhatIfDeps } from "./service.ts";
import { createWhatIfStore } from "./store.ts";

/** What would be, were trains or records other than they are. */
export function installWhatIf(app: HttpApp, deps: WhatIfDeps & { readonly database: DatabaseClient }): void {
  registerWhatIfRoutes(app, createWhatIfService(createWhatIfStore(deps.database), deps));
}
