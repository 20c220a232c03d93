import type { MailTemplate } from "../../shared/mails.ts";
import type { Transaction } from "../database/transaction.ts";
import { newId } from "../lib/ids.ts";
import { type LetterData, writeLetter } from "./letters.ts";

/** A mail to be sent once the transaction that queues it is done, and never if it is not. */
export interface OutgoingMail<T extends MailTemplate = MailTemplate> {
  /** What it is about: of several with one key the first is sent alone. */
  readonly key: string;
  readonly clubId: string | null;
  readonly to: string;
  readonly template: T;
  readonly data: LetterData[T];
}

export interface Mailer {
  /** False where no mail server is known: links must then be handed on in another way. */
  readonly sends: boolean;
  queue<T extends MailTemplate>(transaction: Transaction, mail: OutgoingMail<T>): Promise<void>;
}

/** For a service that knows no mail server. */
export const quietMailer: Mailer = { sends: false, queue: async () => {} };

export const SEND_TASK = "send-mail";
/** With the queue's growing pauses, about a day. */
export const MOST_ATTEMPTS = 14;

/** Queues in the database, so that any process may send it, after a crash as well. */
export const queueingMailer: Mailer = {
  sends: true,
  queue: async (transaction, { key, clubId, to, template, data }) => {
    const id = newId();
    const { subject, text } = writeLetter(template, data);
    const made = await transaction.$executeRaw`
      insert into mails (id, club_id, key, to_address, template, subject, text)
      values (${id}::uuid, ${clubId}::uuid, ${key}, ${to}, ${template}, ${subject}, ${text})
      on conflict (key) do nothing`;
    if (made === 0) return;
    await transaction.$queryRaw`
      select 1 from graphile_worker.add_job(
        ${SEND_TASK}, json_build_object('mail', ${id}::text), max_attempts => ${MOST_ATTEMPTS}::int)`;
  },
};
