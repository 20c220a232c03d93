import type { Member } from "../../../shared/members.ts";
import type { Database } from "../client.ts";
import { memberTable } from "./members.ts";
import { readBodies } from "./read-records.ts";
import { type ClubScope, clubScope } from "./record-table.ts";

/** Who has which train of a slot, and whether an adult will be there. */
export interface CrewParts {
  readonly members: readonly Member[];
  readonly turns: readonly {
    readonly train: string;
    readonly member: string;
    readonly handset: string | null;
  }[];
  /** An adult has a train or a duty in the slot, or said that they come. */
  readonly isSupervised: boolean;
}

export const NO_CREW: CrewParts = { members: [], turns: [], isSupervised: true };

/** The claims of a slot; nobody's where nothing is claimed. Two queries at most. */
export async function readCrew(
  database: Database,
  club: ClubScope,
  sessionId: string,
  slotCode: string,
): Promise<CrewParts> {
  const claims = await database.$queryRaw<
    { member: string; train: string | null; handset: string | null; adult: boolean }[]
  >`
    select c.member_code as member, t.code as train, c.handset_code as handset, not m.junior as adult
    from claims c
    join members m on (m.club_id, m.code) = (c.club_id, c.member_code)
    left join trains t on t.id = c.train_id
    where c.session_id = ${sessionId}::uuid and c.slot_code = ${slotCode} order by t.code, c.member_code`;
  if (claims.length === 0) return NO_CREW;
  const [coming] = await database.$queryRaw<{ adult: boolean }[]>`
    select exists (
      select from booking_attendees a
      join members m on (m.club_id, m.code) = (a.club_id, a.member_code)
      where a.session_id = ${sessionId}::uuid and not m.junior
    ) as adult`;
  return {
    members: await readBodies(database, memberTable, clubScope(club)),
    turns: claims.flatMap(({ train, member, handset }) =>
      train === null ? [] : [{ train, member, handset }],
    ),
    isSupervised: coming?.adult === true || claims.some(({ adult }) => adult),
  };
}
