import { z } from "zod";

/** What has become of a mail. */
export const MAIL_STATES = ["waiting", "sending", "sent", "failed"] as const;

export const MAIL_TEMPLATES = [
  "invitation",
  "reset",
  "got-it",
  "assigned",
  "taken-off",
  "swap-offered",
  "swapped",
  "reminder",
  "note-to-all",
] as const;

/** A mail of a club, without its text: that may hold a secret address. */
export const mailView = z
  .object({
    id: z.uuid(),
    template: z.enum(MAIL_TEMPLATES).meta({ description: "What it was about." }),
    to: z.string().meta({ description: "Empty once whose it was has left." }),
    subject: z.string(),
    state: z.enum(MAIL_STATES).meta({
      description: "`sent`: the mail server took it. `failed`: it will not be tried again.",
    }),
    attempts: z.int().meta({ description: "How often it was tried." }),
    error: z.string().nullable().meta({ description: "What the mail server said to the last attempt." }),
    queuedAt: z.iso.datetime(),
    sentAt: z.iso.datetime().nullable(),
  })
  .meta({ id: "Mail" });

export type MailState = (typeof MAIL_STATES)[number];
export type MailTemplate = (typeof MAIL_TEMPLATES)[number];
export type MailView = z.output<typeof mailView>;
