import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { registerSelectorRoutes } from "./routes.ts";
import { createSelectorService, type SelectorDeps } from "./service.ts";
import { createSelectorStore } from "./store.ts";

/** The schedule for the person at the analog panel. */
export function installSelectors(
  app: HttpApp,
  deps: SelectorDeps & { readonly database: DatabaseClient },
): void {
  registerSelectorRoutes(app, createSelectorService(createSelectorStore(deps.database), deps));
}
