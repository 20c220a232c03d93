import type { LinkPurpose } from "../../../shared/accounts.ts";
import type { Database } from "../../database/client.ts";
import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";
import { hashSecret, makeSecret } from "../../lib/secret.ts";

/** How long a link of each purpose works. */
const LIFE_MS = {
  invitation: 7 * 86_400_000,
  reset: 3_600_000,
  "first-secretary": 86_400_000,
} as const satisfies Record<LinkPurpose, number>;

interface LinkDraft {
  readonly purpose: LinkPurpose;
  readonly clubId?: string;
  readonly memberCode?: string;
  readonly personId?: string;
  readonly email?: string;
}

export interface NewLink {
  readonly id: string;
  readonly token: string;
  readonly expiresAt: Date;
}

/** Makes a link; those that ran out go, whosever they were. */
export async function makeLink(transaction: Transaction, draft: LinkDraft, now: Date): Promise<NewLink> {
  const token = makeSecret();
  const id = newId(now.getTime());
  const expiresAt = new Date(now.getTime() + LIFE_MS[draft.purpose]);
  await transaction.oneTimeLink.deleteMany({ where: { expiresAt: { lte: now } } });
  await transaction.oneTimeLink.create({
    data: { ...draft, id, tokenHash: hashSecret(token), createdAt: now, expiresAt },
  });
  return { id, token, expiresAt };
}

/** A link that can be used now, with what it leads to. */
export const findLink = (database: Database, token: string, now: Date) =>
  database.oneTimeLink.findFirst({
    where: { tokenHash: hashSecret(token), expiresAt: { gt: now } },
    include: { club: true, member: true, person: true },
  });

/** Takes it, so that nobody else can: of several at once one alone hears true. */
export async function takeLink(transaction: Transaction, id: string): Promise<boolean> {
  const { count } = await transaction.oneTimeLink.deleteMany({ where: { id } });
  return count === 1;
}
