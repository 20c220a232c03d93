import type { Transaction } from "../../database/transaction.ts";
import type { AccountDeps } from "./deps.ts";
import { stillHas } from "./errors.ts";

/** What stands where a name was. */
const NEUTRAL_NAME = "Former member";

/** Others reckon with what somebody has in a night to come: they give it back first, and whoever waits gets it. */
async function assertNothingToCome(transaction: Transaction, clubId: string, memberCode: string, now: Date) {
  const [found] = await transaction.$queryRaw<{ count: number }[]>`
    select count(*)::int as count from claims c
    join bookings b on b.session_id = c.session_id and b.state in ('open', 'locked', 'running')
    where c.club_id = ${clubId}::uuid and c.member_code = ${memberCode} and c.until_at > ${now}::timestamptz`;
  if (found && found.count > 0) throw stillHas(found.count);
}

/**
 * Leaves nothing that says who it was. Deeds stay in the nights and the trail, done by nobody; the person's row stays as an
 * id alone. That a club keeps a secretary is the database's to see to.
 */
export async function erasePerson(
  transaction: Transaction,
  personId: string,
  { clock }: Pick<AccountDeps, "clock">,
): Promise<void> {
  const person = await transaction.person.findUniqueOrThrow({
    where: { id: personId },
    include: { memberships: true },
  });
  for (const { clubId, memberCode } of person.memberships) {
    await assertNothingToCome(transaction, clubId, memberCode, clock.now());
    await transaction.queuePlace.deleteMany({ where: { clubId, memberCode } });
    await transaction.member.update({
      where: { clubId_code: { clubId, code: memberCode } },
      data: { name: NEUTRAL_NAME, note: "", passedFor: [], roles: [] },
    });
  }
  await transaction.membership.deleteMany({ where: { personId } });
  await transaction.signIn.deleteMany({ where: { personId } });
  await transaction.accessToken.deleteMany({ where: { personId } });
  await transaction.oneTimeLink.deleteMany({ where: { OR: [{ personId }, { email: person.email ?? "" }] } });
  await transaction.$executeRaw`delete from calendar_feeds where person_id = ${personId}::uuid`;
  await transaction.$executeRaw`
    update mails set to_address = '', subject = '', text = null where to_address = ${person.email}`;
  await transaction.$executeRaw`update trail set person_id = null where person_id = ${personId}::uuid`;
  // what this very transaction changed is told of at its end
  await transaction.$executeRaw`select set_config('foreman.person', '', true)`;
  await transaction.person.update({
    where: { id: personId },
    data: { name: NEUTRAL_NAME, email: null, passwordHash: null, erasedAt: clock.now() },
  });
}
