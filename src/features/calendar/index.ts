import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerFeed, registerSessionCalendar } from "./routes.ts";
import { createCalendarService } from "./service.ts";

interface CalendarDeps {
  readonly database: DatabaseClient;
  /** Where people reach the service, with a slash at the end. */
  readonly publicUrl: () => string;
}

/** Nights and turns for calendar programs. */
export function installCalendar(app: HttpApp, { database, publicUrl }: CalendarDeps): void {
  const service = createCalendarService(database);
  registerSessionCalendar(app, service);
  registerFeed(app, service, publicUrl);
}
