import { code } from "../../../shared/units.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installCollection } from "../../records/collection-routes.ts";
import type { CheckSlot } from "./blocks.ts";
import { dutyKind, reachDuties } from "./duty-kind.ts";
import { registerBookingRoutes } from "./routes.ts";
import { createBookingService } from "./service.ts";

export type { CheckSlot };

/** The booking of nights: how far each has come, its notes, who comes, and its standing duties. */
export function installBooking(
  app: HttpApp,
  { database }: { readonly database: DatabaseClient },
  checkSlot: CheckSlot,
): void {
  registerBookingRoutes(app, createBookingService({ database, checkSlot }));
  installCollection(app, database, dutyKind, {
    under: "/api/clubs/:club/sessions/:session/slots/:slot",
    params: { club: code, session: code, slot: code },
    tag: "booking",
    resolve: ({ club = "", session = "", slot = "" }) => reachDuties(database, club, session, slot),
  });
}
