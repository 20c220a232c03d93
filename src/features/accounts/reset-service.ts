import { linkPath } from "../../../shared/page-addresses.ts";
import { inTransaction } from "../../database/transaction.ts";
import { dayAndTime } from "../../lib/local-time.ts";
import type { AccountDeps } from "./deps.ts";
import { createGuesses } from "./guesses.ts";
import { makeLink } from "./link-store.ts";

/** Nobody's mailbox is filled by someone who asks over and over. */
const BETWEEN_MAILS_MS = 300_000;
const ZONE = "UTC";

export type ResetService = ReturnType<typeof createResetService>;

/** Sends links to choose a new password with. */
export function createResetService({ database, clock, mailer, publicUrl }: AccountDeps) {
  const guesses = createGuesses(database);
  const underWay = new Set<Promise<void>>();

  async function send(email: string): Promise<void> {
    const now = clock.now();
    const person = await database.person.findUnique({ where: { email } });
    if (person === null || person.demo || !mailer.sends) return;
    await inTransaction(database, async (transaction) => {
      const last = await transaction.oneTimeLink.findFirst({
        where: { personId: person.id, purpose: "reset" },
      });
      if (last && now.getTime() - last.createdAt.getTime() < BETWEEN_MAILS_MS) return;
      await transaction.oneTimeLink.deleteMany({ where: { personId: person.id } });
      const made = await makeLink(transaction, { purpose: "reset", personId: person.id }, now);
      await mailer.queue(transaction, {
        key: `reset ${made.id}`,
        clubId: null,
        to: email,
        template: "reset",
        data: {
          link: linkAddress(publicUrl(), made.token),
          until: `${dayAndTime(made.expiresAt, ZONE)} ${ZONE}`,
        },
      });
    });
  }

  return {
    /** Answered before anything is looked up: how long it took tells nobody whether there is such an account. */
    async request(email: string, address: string, log: { error(problem: object, text: string): void }) {
      await guesses.countRequest(address, clock.now());
      const sending = send(email)
        .catch((err: unknown) => log.error({ err }, "a reset was not sent"))
        .finally(() => underWay.delete(sending));
      underWay.add(sending);
    },
    async settled(): Promise<void> {
      await Promise.all(underWay);
    },
  };
}

/** The page that a one-time link leads to. */
export const linkAddress = (publicUrl: string, token: string) => new URL(linkPath(token), publicUrl).href;
