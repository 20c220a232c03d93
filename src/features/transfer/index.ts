import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import type { TransferKinds } from "./parts.ts";
import { registerDocumentRoutes } from "./routes.ts";
import { createTransferService } from "./service.ts";

export { createTransferService, type TransferKinds };

/** A club's records out and in: one JSON document, and CSV for spreadsheets. */
export function installTransfer(
  app: HttpApp,
  { database }: { readonly database: DatabaseClient },
  kinds: TransferKinds,
): void {
  const service = createTransferService(database, kinds);
  registerDocumentRoutes(app, service);
}
