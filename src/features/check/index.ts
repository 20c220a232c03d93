import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { registerCheckRoutes } from "./routes.ts";
import { type CheckService, createCheckService } from "./service.ts";
import { createCheckStore } from "./store.ts";

export { checkParts } from "./service.ts";
export { type StoredClock, toStoredClock, toStoredProblem } from "./stored-problem.ts";

/** The check of a stored slot as it is now, for others to look at. */
export const createSlotCheck = (database: DatabaseClient): CheckService["checkSlot"] =>
  createCheckService(createCheckStore(database)).checkSlot;

/** The check of a night: of a stored slot, and of a plan posted whole. */
export function installCheck(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  registerCheckRoutes(app, createCheckService(createCheckStore(database)));
}
