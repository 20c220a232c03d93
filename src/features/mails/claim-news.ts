import type { MailTemplate } from "../../../shared/mails.ts";
import { eveningPath } from "../../../shared/page-addresses.ts";
import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";
import { dayAndTime } from "../../lib/local-time.ts";
import type { Mailer } from "../../mail/mailer.ts";

/** Something that happened to a member's claim without them. */
export interface ClaimNews {
  readonly kind: keyof typeof TEMPLATES;
  readonly clubId: string;
  readonly club: string;
  readonly session: string;
  readonly job: { readonly kind: "train" | "duty"; readonly code: string; readonly name: string };
  readonly claimId: string;
  readonly member: string;
}

const TEMPLATES = {
  "got-from-queue": "got-it",
  assigned: "assigned",
  "taken-off": "taken-off",
  "swap-offered": "swap-offered",
  swapped: "swapped",
} as const satisfies Record<string, MailTemplate>;

interface Receiver {
  readonly email: string;
  readonly club: string;
  readonly zone: string;
  readonly night: string;
  /** Of the claim; of the night, where the claim is gone. */
  readonly at: Date;
  readonly handset: string | null;
}

/** Mails claim news to those that have an account, with the deed it tells of. */
export const createClaimPost =
  (mailer: Mailer, publicUrl: () => string) =>
  async (transaction: Transaction, news: ClaimNews): Promise<void> => {
    if (!mailer.sends) return;
    const to = await readReceiver(transaction, news);
    if (to === undefined) return;
    await mailer.queue(transaction, {
      key: `${news.kind} ${news.claimId} ${newId()}`,
      clubId: news.clubId,
      to: to.email,
      template: TEMPLATES[news.kind],
      data: {
        club: to.club,
        night: to.night,
        what: news.job.kind === "train" ? `Train ${news.job.code}, ${news.job.name}` : news.job.name,
        when: dayAndTime(to.at, to.zone),
        handset: to.handset,
        link: new URL(eveningPath(news.club, news.session), publicUrl()).href,
      },
    });
  };

async function readReceiver(
  transaction: Transaction,
  { clubId, session, claimId, member }: ClaimNews,
): Promise<Receiver | undefined> {
  const [receiver] = await transaction.$queryRaw<Receiver[]>`
    select p.email, l.name as club, l.time_zone as zone, s.name as night, h.name as handset,
      coalesce(c.from_at, (select min(starts_at) from slots where session_id = s.id)) as at
    from memberships o
    join people p on p.id = o.person_id and p.email is not null
    join clubs l on l.id = o.club_id
    join sessions s on s.club_id = l.id and s.code = ${session}
    left join claims c on c.id = ${claimId}::uuid
    left join handsets h on (h.club_id, h.code) = (c.club_id, c.handset_code)
    where o.club_id = ${clubId}::uuid and o.member_code = ${member}`;
  return receiver;
}
