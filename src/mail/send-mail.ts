import type pg from "pg";
import { MOST_ATTEMPTS } from "./mailer.ts";
import { isRefusedForGood, type Transport } from "./transport.ts";

export type Query = <Row extends pg.QueryResultRow>(
  text: string,
  values: unknown[],
) => Promise<pg.QueryResult<Row>>;

interface Taken {
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly attempts: number;
}

// one that is being sent already was in the hands of a process that died
const TAKE = `update mails set state = 'sending', attempts = attempts + 1
  where id = $1 and state in ('waiting', 'sending')
  returning to_address as to, subject, text, attempts`;
const SENT = "update mails set state = 'sent', sent_at = now(), text = null, error = null where id = $1";
const WAITS = "update mails set state = 'waiting', error = $2 where id = $1";
const FAILED = "update mails set state = 'failed', error = $2, text = null where id = $1";

const LONGEST_ERROR = 500;

/**
 * Sends a queued mail; returns when there is nothing left to do for it.
 * A process that dies after the mail server took the mail and before that is written down (the one reply's way back)
 * leaves it to be sent again, with the same Message-ID: SMTP has no way to ask. Everything else is once.
 * @throws what the attempt failed of, when it should be tried again later
 */
export async function sendMail(query: Query, transport: Transport, id: string): Promise<void> {
  const {
    rows: [mail],
  } = await query<Taken>(TAKE, [id]);
  if (mail === undefined) return;
  try {
    await transport.send({ id, to: mail.to, subject: mail.subject, text: mail.text });
  } catch (error) {
    const said = String(error instanceof Error ? error.message : error).slice(0, LONGEST_ERROR);
    const last = isRefusedForGood(error) || mail.attempts >= MOST_ATTEMPTS;
    await query(last ? FAILED : WAITS, [id, said]);
    if (last) return;
    throw error;
  }
  await query(SENT, [id]);
}
