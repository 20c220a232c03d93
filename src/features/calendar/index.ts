import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerSessionCalendar } from "./routes.ts";
import { createCalendarService } from "./service.ts";

/** Nights for calendar programs. */
export function installCalendar(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  registerSessionCalendar(app, createCalendarService(database));
}
