import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { registerCostingRoutes } from "./routes.ts";
import { type CostingDeps, createCostingService } from "./service.ts";
import { createCostingStore } from "./store.ts";

/** Analog or digital: one timetable costed both ways. */
export function installCosting(
  app: HttpApp,
  deps: CostingDeps & { readonly database: DatabaseClient },
): void {
  registerCostingRoutes(app, createCostingService(createCostingStore(deps.database), deps));
}
