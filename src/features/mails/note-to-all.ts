import { crewPath } from "../../../shared/page-addresses.ts";
import type { BookedNight } from "../../database/bookings.ts";
import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";
import { dayAndTime } from "../../lib/local-time.ts";
import type { Mailer } from "../../mail/mailer.ts";

interface Receiver {
  readonly email: string;
  readonly club: string;
  readonly begins: Date;
}

/** Mails a note to everybody who said they come or has something to do in the night, with the change that brings it. */
export const createNotePost =
  (mailer: Mailer, publicUrl: () => string) =>
  async (transaction: Transaction, night: BookedNight, note: string): Promise<void> => {
    if (!mailer.sends) return;
    const key = `note ${night.id} ${newId()}`;
    for (const { email, club, begins } of await readReceivers(transaction, night))
      await mailer.queue(transaction, {
        key: `${key} ${email}`,
        clubId: night.club.id,
        to: email,
        template: "note-to-all",
        data: {
          club,
          night: night.name,
          begins: dayAndTime(begins, night.club.timeZone),
          note,
          link: new URL(crewPath(night.club.code, night.code), publicUrl()).href,
        },
      });
  };

const readReceivers = (transaction: Transaction, { id, club }: BookedNight): Promise<Receiver[]> =>
  transaction.$queryRaw<Receiver[]>`
    select p.email, l.name as club, (select min(starts_at) from slots where session_id = ${id}::uuid) as begins
    from (
      select member_code from booking_attendees where session_id = ${id}::uuid
      union
      select member_code from claims where session_id = ${id}::uuid
    ) there
    join memberships o on o.club_id = ${club.id}::uuid and o.member_code = there.member_code
    join people p on p.id = o.person_id and p.email is not null
    join clubs l on l.id = o.club_id
    order by p.email`;
