import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { commandSystemKind, controllerKind, districtKind, selectorKind, supplyKind } from "./feed-kinds.ts";
import { shortTestKind } from "./short-test-kind.ts";
import { areaKind, lineKind, linkKind, placeKind, sectionKind } from "./track-kinds.ts";
import { walkKind } from "./walk-kind.ts";

/** The railway, each kind after those that it refers to. */
export const layoutKinds = [
  areaKind,
  placeKind,
  walkKind,
  lineKind,
  commandSystemKind,
  supplyKind,
  districtKind,
  sectionKind,
  linkKind,
  controllerKind,
  selectorKind,
  shortTestKind,
] as const satisfies readonly RecordKind[];

/** The records of the railway. */
export function installLayout(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "layout", layoutKinds);
}
