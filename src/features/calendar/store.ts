import type { BookingState } from "../../../shared/booking.ts";
import type { Database } from "../../database/client.ts";

/** A night as a calendar shows it, whole. */
export interface CalendarNight {
  readonly id: string;
  readonly club: string;
  readonly session: string;
  readonly name: string;
  readonly state: BookingState;
  readonly changes: number;
  readonly changedAt: Date;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly venueNote: string;
  readonly noteToAll: string;
  readonly slots: readonly { readonly name: string; readonly startsAt: Date }[];
}

/** The night of a club's session; undefined where there is none. One query. */
export async function readNight(
  database: Database,
  clubId: string,
  sessionCode: string,
): Promise<CalendarNight | undefined> {
  const [night] = await database.$queryRaw<CalendarNight[]>`
    select s.id, c.name as club, s.code as session, s.name, coalesce(b.state, 'draft') as state,
      s.version + coalesce(b.version, 1) as changes, greatest(s.updated_at, b.updated_at) as "changedAt",
      min(t.starts_at) as "startsAt", max(t.ends_at) as "endsAt",
      coalesce(b.venue_note, '') as "venueNote", coalesce(b.note_to_all, '') as "noteToAll",
      json_agg(json_build_object('name', t.name, 'startsAt', t.starts_at) order by t.starts_at) as slots
    from sessions s
    join clubs c on c.id = s.club_id
    join slots t on t.session_id = s.id
    left join bookings b on b.session_id = s.id
    where s.club_id = ${clubId}::uuid and s.code = ${sessionCode}
    group by s.id, c.id, b.id`;
  return night;
}
