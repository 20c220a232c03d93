import { z } from "zod";
import { MAIL_STATES, type MailState, type MailTemplate, mailView } from "../../../shared/mails.ts";
import { code } from "../../../shared/units.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { pageOf, pageQuery, parseCursor, toPage } from "../../http/pages.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { reachClub } from "../../records/reach-club.ts";

const cursorKey = z.tuple([z.uuid()]);
const querystring = z.strictObject({
  ...pageQuery.shape,
  state: z.enum(MAIL_STATES).optional().meta({ description: "Only those in this state." }),
});

export function registerMailRoutes(app: HttpApp, database: DatabaseClient): void {
  app.get(
    "/api/clubs/:club/mails",
    {
      config: { access: "keep-club" },
      schema: {
        tags: ["mails"],
        operationId: "listMails",
        summary: "List a club's mails",
        description:
          "The last queued first: what was sent, what waits, what the mail server would not take and why. Their texts are not kept.",
        params: z.strictObject({ club: code }),
        querystring,
        response: { 200: pageOf(mailView), ...refusalResponses("validation-failed", "not-found") },
      },
    },
    async ({ params, query: { limit, cursor, state } }) => {
      const club = await reachClub(database, params.club);
      const [before] = parseCursor(cursor, cursorKey) ?? [];
      const found = await database.mail.findMany({
        where: { clubId: club.id, ...(state && { state }), ...(before && { id: { lt: before } }) },
        // ids count up with time
        orderBy: { id: "desc" },
        take: limit + 1,
      });
      return toPage(found, limit, ({ id }) => [id], toView);
    },
  );
}

const toView = (row: rows.Mail) => ({
  id: row.id,
  template: row.template as MailTemplate,
  to: row.toAddress,
  subject: row.subject,
  state: row.state as MailState,
  attempts: row.attempts,
  error: row.error,
  queuedAt: row.createdAt.toISOString(),
  sentAt: row.sentAt?.toISOString() ?? null,
});
