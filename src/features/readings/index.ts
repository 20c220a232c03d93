import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { readingKind } from "./kinds.ts";
import { registerReadingRoutes } from "./routes.ts";
import { createReadingService, type ReadingDeps } from "./service.ts";
import { createReadingStore } from "./store.ts";

export { readingKind };

/** What meters showed, and what follows from it. */
export function installReadings(
  app: HttpApp,
  deps: ReadingDeps & { readonly database: DatabaseClient },
): void {
  installClubCollections(app, deps.database, "readings", [readingKind]);
  registerReadingRoutes(app, createReadingService(createReadingStore(deps.database), deps));
}
