import type { MemberAccount } from "../../../shared/accounts.ts";
import type { ClubScope } from "../../database/records/record-table.ts";
import { inTransaction, type Transaction } from "../../database/transaction.ts";
import { dayAndTime } from "../../lib/local-time.ts";
import type { AccountDeps } from "./deps.ts";
import { belongsElsewhere, hasAccount, noMember } from "./errors.ts";
import { makeLink, type NewLink } from "./link-store.ts";
import { linkAddress } from "./reset-service.ts";

export type InvitationService = ReturnType<typeof createInvitationService>;

/** Lets a club's members in: links that the secretary hands on, and mails where the service sends any. */
export function createInvitationService({ database, clock, mailer, publicUrl }: AccountDeps) {
  /** A link in place of the one before. */
  async function makeInvitation(transaction: Transaction, clubId: string, memberCode: string, email: string) {
    await transaction.oneTimeLink.deleteMany({ where: { clubId, memberCode } });
    return makeLink(transaction, { purpose: "invitation", clubId, memberCode, email }, clock.now());
  }

  return {
    /** One that has an account already gets a link to a new password, where the account is this club's alone. */
    async invite(club: ClubScope, memberCode: string, email: string) {
      const made = await inTransaction(database, async (transaction) => {
        const { member, person } = await reachMember(transaction, club, memberCode);
        if (person !== undefined) return makeReset(transaction, memberCode, person, email, clock.now());
        const link = await makeInvitation(transaction, club.id, memberCode, email);
        const { name } = await transaction.club.findUniqueOrThrow({ where: { id: club.id } });
        await mailer.queue(transaction, {
          key: `invitation ${link.id}`,
          clubId: club.id,
          to: email,
          template: "invitation",
          data: {
            club: name,
            member: member.name,
            link: linkAddress(publicUrl(), link.token),
            until: dayAndTime(link.expiresAt, club.timeZone),
          },
        });
        return { ...link, mailed: mailer.sends };
      });
      return {
        link: linkAddress(publicUrl(), made.token),
        expiresAt: made.expiresAt.toISOString(),
        mailed: made.mailed,
      };
    },
    /** Harmless where there is no link. */
    async revoke(club: ClubScope, memberCode: string): Promise<void> {
      await reachMember(database, club, memberCode);
      await database.oneTimeLink.deleteMany({ where: { clubId: club.id, memberCode } });
    },
    /** Who of the club can sign in, and with which address. */
    async listAccounts(club: ClubScope): Promise<MemberAccount[]> {
      const members = await database.member.findMany({
        where: { clubId: club.id },
        select: {
          code: true,
          membership: { select: { person: { select: { email: true } } } },
          invitation: { select: { email: true, expiresAt: true } },
        },
        orderBy: { code: "asc" },
      });
      return members.map(({ code, membership, invitation }) => {
        if (membership) return { member: code, account: "active", email: membership.person.email };
        if (invitation && invitation.expiresAt > clock.now())
          return { member: code, account: "invited", email: invitation.email };
        return { member: code, account: "none", email: null };
      });
    },
  };
}

async function reachMember(database: Transaction, club: ClubScope, code: string) {
  const member = await database.member.findUnique({
    where: { clubId_code: { clubId: club.id, code } },
    include: { membership: { include: { person: { include: { memberships: true } } } } },
  });
  if (member === null) throw noMember(code);
  return { member, person: member.membership?.person };
}

type Account = NonNullable<Awaited<ReturnType<typeof reachMember>>["person"]>;

async function makeReset(
  transaction: Transaction,
  memberCode: string,
  person: Account,
  email: string,
  now: Date,
): Promise<NewLink & { readonly mailed: boolean }> {
  if (person.email !== email) throw hasAccount(memberCode);
  if (person.memberships.length > 1 || person.demo) throw belongsElsewhere(memberCode);
  await transaction.oneTimeLink.deleteMany({ where: { personId: person.id } });
  return { ...(await makeLink(transaction, { purpose: "reset", personId: person.id }, now)), mailed: false };
}
