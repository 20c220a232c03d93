import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerMailRoutes } from "./routes.ts";

export { createClaimPost } from "./claim-news.ts";
export { createNotePost } from "./note-to-all.ts";
export { reminderChore } from "./reminders.ts";

/** What the club's mails came to. */
export function installMails(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  registerMailRoutes(app, database);
}
