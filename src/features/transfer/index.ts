import type { ClubDocument } from "../../../shared/documents.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import {
  type Column,
  DECODER_COLUMNS,
  HANDSET_COLUMNS,
  LOCOMOTIVE_COLUMNS,
  RAKE_COLUMNS,
  READING_COLUMNS,
} from "./csv/columns.ts";
import { registerSheetRoutes } from "./csv/routes.ts";
import { createSheetService, type SheetKind } from "./csv/service.ts";
import { registerMappedRoutes } from "./mapped/routes.ts";
import { createMappedService } from "./mapped/service.ts";
import type { TransferKinds } from "./parts.ts";
import { registerDocumentRoutes } from "./routes.ts";
import { createTransferService } from "./service.ts";

export { writeSheet } from "./csv/sheet.ts";
export { createTransferService, type TransferKinds };

/** A club's records out and in: one JSON document, and CSV for spreadsheets. */
export async function installTransfer(
  app: HttpApp,
  { database }: { readonly database: DatabaseClient },
  kinds: TransferKinds,
): Promise<void> {
  const service = createTransferService(database, kinds);
  registerDocumentRoutes(app, service);
  registerMappedRoutes(app, createMappedService(service));
  await registerSheetRoutes(app, createSheetService(database, service), toSheetKinds(kinds), kinds.train);
}

const ROSTER_COLUMNS: Readonly<Record<string, readonly Column[]>> = {
  locomotives: LOCOMOTIVE_COLUMNS,
  decoders: DECODER_COLUMNS,
  rakes: RAKE_COLUMNS,
};

/** The kinds that go out and in as sheets with one row a record. */
function toSheetKinds({ roster, handset, reading }: TransferKinds): SheetKind[] {
  const ofRoster = (kind: RecordKind): SheetKind => ({
    kind,
    columns: ROSTER_COLUMNS[kind.many] ?? [],
    wrap: (records) => ({ roster: { [kind.many]: records } }) as unknown as ClubDocument,
    depth: ["roster", kind.many].length,
  });
  const ofHandsets: SheetKind = {
    kind: handset,
    columns: HANDSET_COLUMNS,
    wrap: (records) => ({ handsets: records }) as unknown as ClubDocument,
    depth: 1,
  };
  const ofReadings: SheetKind = {
    kind: reading,
    columns: READING_COLUMNS,
    wrap: (records) => ({ readings: records }) as unknown as ClubDocument,
    depth: 1,
  };
  return [...roster.map(ofRoster), ofHandsets, ofReadings];
}
