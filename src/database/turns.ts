import type { Database } from "./client.ts";

/** A train or a duty that somebody has in a night that is on, with what they need to know of it. */
export interface Turn {
  readonly claim: string;
  readonly changes: number;
  readonly changedAt: Date;
  /** From the pick-up of the handset to its hand-in. */
  readonly fromAt: Date;
  readonly untilAt: Date;
  readonly clubId: string;
  readonly club: string;
  readonly clubCode: string;
  readonly zone: string;
  readonly sessionId: string;
  readonly session: string;
  readonly night: string;
  readonly venueNote: string;
  /** `Train 101, Morning goods`, `Yard, Evening shunting`. */
  readonly what: string;
  /** The place and road where it begins; empty where a duty has none. */
  readonly where: string;
  readonly handset: string | null;
  /** `E7 (3)`: each with the address that its decoder answers to. */
  readonly locomotives: string;
}

/** Of one person in all their clubs, or of everybody in nights that begin within a time; by start. One query. */
export const readTurns = (
  database: Database,
  of: { readonly person: string } | { readonly begins: { readonly after: Date; readonly until: Date } },
): Promise<(Turn & { personId: string; email: string; memberName: string; begins: Date })[]> => {
  const person = "person" in of ? of.person : null;
  const after = "begins" in of ? of.begins.after : null;
  const until = "begins" in of ? of.begins.until : null;
  return database.$queryRaw`
    select c.id as claim, c.version + b.version as changes, greatest(c.updated_at, b.updated_at) as "changedAt",
      c.from_at as "fromAt", c.until_at as "untilAt",
      l.id as "clubId", l.name as club, l.code as "clubCode", l.time_zone as zone,
      s.id as "sessionId", s.code as session, s.name as night, b.venue_note as "venueNote",
      case when t.id is null then d.name else 'Train ' || t.code || ', ' || t.name end as what,
      concat_ws(', ', coalesce(tp.name, dp.name), ts.name) as where,
      h.name as handset, coalesce(power.text, '') as locomotives,
      p.id as "personId", p.email, m.name as "memberName",
      (select min(starts_at) from slots where session_id = s.id) as begins
    from claims c
    join sessions s on s.id = c.session_id
    join bookings b on b.session_id = s.id and b.state in ('open', 'locked', 'running', 'finished')
    join clubs l on l.id = c.club_id
    join members m on (m.club_id, m.code) = (c.club_id, c.member_code)
    join memberships o on (o.club_id, o.member_code) = (m.club_id, m.code)
    join people p on p.id = o.person_id and p.email is not null
    left join trains t on t.id = c.train_id
    left join path_entries e on e.train_id = t.id and e.position = 0
    left join sections ts on (ts.club_id, ts.code) = (e.club_id, e.section_code)
    left join places tp on (tp.club_id, tp.code) = (ts.club_id, ts.place_code)
    left join duties d on d.id = c.duty_id
    left join places dp on (dp.club_id, dp.code) = (d.club_id, d.place_code)
    left join handsets h on (h.club_id, h.code) = (c.club_id, c.handset_code)
    left join lateral (
      select string_agg(concat(k.name, ' (' || q.address || ')'), ', ' order by tl.position) as text
      from train_locomotives tl
      join locomotives k on (k.club_id, k.code) = (tl.club_id, tl.locomotive_code)
      left join decoders q on (q.club_id, q.locomotive_code) = (k.club_id, k.code)
      where tl.train_id = t.id
    ) power on true
    where (${person}::uuid is null or p.id = ${person}::uuid)
      and (${after}::timestamptz is null or (
        b.state in ('open', 'locked') and
        (select min(starts_at) from slots where session_id = s.id) > ${after}::timestamptz and
        (select min(starts_at) from slots where session_id = s.id) <= ${until}::timestamptz))
    order by c.from_at, c.id`;
};
