import type { BookingState } from "../../shared/booking.ts";
import type { Database } from "./client.ts";
import type * as rows from "./generated/client.ts";
import type { ClubScope } from "./records/record-table.ts";
import type { Transaction } from "./transaction.ts";

/** A session as its booking sees it. */
export interface BookedNight {
  readonly club: ClubScope;
  readonly id: string;
  readonly code: string;
  readonly name: string;
  /** Of the session's record: it counts whatever is changed of the night's hours and timetables. */
  readonly version: number;
  readonly clockRatio: number;
}

/** A night's booking; one that nobody has changed yet is a draft at version 1, without a row. */
export interface BookingNow {
  readonly state: BookingState;
  readonly reason: string | null;
  readonly venueNote: string;
  readonly noteToAll: string;
  readonly secondClaimFrom: Date | null;
  readonly pickUpMs: number;
  readonly handInMs: number;
  readonly version: number;
}

const UNTOUCHED: BookingNow = {
  state: "draft",
  reason: null,
  venueNote: "",
  noteToAll: "",
  secondClaimFrom: null,
  pickUpMs: 0,
  handInMs: 0,
  version: 1,
};

export async function findNight(
  database: Database,
  club: ClubScope,
  code: string,
): Promise<BookedNight | undefined> {
  const found = await database.session.findUnique({
    where: { clubId_code: { clubId: club.id, code } },
    select: { id: true, code: true, name: true, version: true, clockRatio: true },
  });
  return found === null ? undefined : { club, ...found };
}

export const toBooking = (row: rows.Booking | null): BookingNow =>
  row === null ? UNTOUCHED : { ...row, state: row.state as BookingState };

export async function readBooking(database: Database, sessionId: string): Promise<BookingNow> {
  return toBooking(await database.booking.findFirst({ where: { sessionId } }));
}

/**
 * Changes of a night and its booking come one after the other from here to the end of the transaction, and claims wait.
 * Returns the version at which the session's record stays.
 */
export async function holdNight(transaction: Transaction, { id }: BookedNight): Promise<number> {
  const [row] = await transaction.$queryRaw<{ version: number }[]>`
    select version from sessions where id = ${id}::uuid for no key update`;
  await transaction.$queryRaw`select 1 from bookings where session_id = ${id}::uuid for no key update`;
  return row?.version ?? 0;
}

export interface JuniorAlone {
  readonly slot: string;
  readonly member: string;
  readonly name: string;
}

/** Juniors with a claim in a slot in which no adult has one, on a night to which no adult said that they come. */
export const findJuniorsAlone = (database: Database, sessionId: string): Promise<JuniorAlone[]> =>
  database.$queryRaw<JuniorAlone[]>`
    select distinct c.slot_code as slot, m.code as member, m.name
    from claims c join members m on (m.club_id, m.code) = (c.club_id, c.member_code)
    where c.session_id = ${sessionId}::uuid and m.junior
      and not exists (
        select from claims o join members a on (a.club_id, a.code) = (o.club_id, o.member_code)
        where o.session_id = c.session_id and o.slot_code = c.slot_code and not a.junior)
      and not exists (
        select from booking_attendees b join members a on (a.club_id, a.code) = (b.club_id, b.member_code)
        where b.session_id = c.session_id and not a.junior)
    order by 1, 2`;

export interface SlotManning {
  readonly sessionId: string;
  readonly slot: string;
  readonly name: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  /** Whether trains of its timetable version can no longer change. */
  readonly issued: boolean;
  readonly timetable: string;
  readonly timetableVersion: number;
  readonly trains: number;
  readonly manned: number;
  readonly duties: number;
  readonly mannedDuties: number;
  /** Trains and duties of one member in it. */
  readonly mine: number;
}

/**
 * How much of every slot of the sessions has somebody to do it, by start; one query. A train counts where it departs:
 * within the slot, half-open, its instant rounded to the ms, halves up.
 */
export const readManning = (
  database: Database,
  clubId: string,
  sessionIds: readonly string[],
  member: string | null,
): Promise<SlotManning[]> =>
  database.$queryRaw<SlotManning[]>`
    select s.session_id as "sessionId", s.code as slot, s.name, s.starts_at as "startsAt", s.ends_at as "endsAt",
      v.state = 'issued' as issued, s.timetable_code as timetable, s.timetable_version as "timetableVersion",
      run.trains, run.manned, todo.duties, todo."mannedDuties", own.mine
    from slots s
    join sessions n on n.id = s.session_id
    join timetable_versions v on (v.club_id, v.timetable_code, v.number) = (s.club_id, s.timetable_code, s.timetable_version)
    cross join lateral (
      select count(*)::int as trains, count(c.id)::int as manned
      from trains t
      join path_entries p on p.train_id = t.id and p.position = 0
      left join claims c on c.session_id = s.session_id and c.slot_code = s.code and c.train_id = t.id
      where t.version_id = v.id
        and floor((p.depart_s - s.layout_start_s) * 1000 / n.clock_ratio + 0.5) >= 0
        and floor((p.depart_s - s.layout_start_s) * 1000 / n.clock_ratio + 0.5)
          < extract(epoch from s.ends_at - s.starts_at) * 1000
    ) run
    cross join lateral (
      select count(*)::int as duties, count(c.id)::int as "mannedDuties"
      from duties d
      left join claims c on c.session_id = s.session_id and c.slot_code = s.code and c.duty_id = d.id
      where d.session_id = s.session_id and d.slot_code = s.code
    ) todo
    cross join lateral (
      select count(*)::int as mine from claims c
      where c.session_id = s.session_id and c.slot_code = s.code and c.member_code = ${member ?? ""}
    ) own
    where s.club_id = ${clubId}::uuid and s.session_id = any(${[...sessionIds]}::uuid[])
    order by s.starts_at`;
