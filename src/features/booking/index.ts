import { code } from "../../../shared/units.ts";
import type { BookedNight } from "../../database/bookings.ts";
import type { Transaction } from "../../database/transaction.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installCollection } from "../../records/collection-routes.ts";
import type { CheckSlot } from "./blocks.ts";
import { dutyKind, reachDuties } from "./duty-kind.ts";
import { registerBookingRoutes } from "./routes.ts";
import { type BookingDeps, createBookingService } from "./service.ts";
import { writeBooking } from "./store.ts";

export type { CheckSlot };

/** A locked night, held, is running from now on: its layout clock was started. */
export async function beginNight(transaction: Transaction, night: BookedNight): Promise<void> {
  await writeBooking(transaction, night, { state: "running" });
}

/** The booking of nights: how far each has come, its notes, who comes, and its standing duties. */
export function installBooking(app: HttpApp, deps: BookingDeps): void {
  const { database } = deps;
  registerBookingRoutes(app, createBookingService(deps));
  installCollection(app, database, dutyKind, {
    under: "/api/clubs/:club/sessions/:session/slots/:slot",
    params: { club: code, session: code, slot: code },
    tag: "booking",
    resolve: ({ club = "", session = "", slot = "" }) => reachDuties(database, club, session, slot),
  });
}
