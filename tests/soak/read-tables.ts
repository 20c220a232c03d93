import pg from "pg";
import type { ClaimFact, HandsetFact, JobFact, MemberFact, NightFacts, WaitFact } from "./facts.ts";

const HANDSETS = `
  select h.code, h.command_system_code as system, h.state, h.kind, h.battery_minutes as "batteryMinutes",
    array(select p.place_code from handset_places p where p.handset_id = h.id) as places
  from handsets h join clubs c on c.id = h.club_id where c.code = $1`;

// layout time to real time by the slot's own start and the night's clock; nothing of what the claims say of it
const TRAINS = `
  select t.code, 'train' as kind, t.requires,
    round(extract(epoch from sl.starts_at) * 1000 + (ends.first_s - sl.layout_start_s) * 1000 / s.clock_ratio)::float8 as "startMs",
    round(extract(epoch from sl.starts_at) * 1000 + (ends.last_s - sl.layout_start_s) * 1000 / s.clock_ratio)::float8 as "endMs",
    ends.places[1] as "firstPlace", ends.places[cardinality(ends.places)] as "lastPlace", ends.places, ends.systems
  from sessions s
  join clubs c on c.id = s.club_id
  join slots sl on sl.session_id = s.id
  join timetable_versions v
    on (v.club_id, v.timetable_code, v.number) = (sl.club_id, sl.timetable_code, sl.timetable_version)
  join trains t on t.version_id = v.id
  cross join lateral (
    select min(e.depart_s) as first_s, max(e.arrive_s) as last_s,
      array_agg(x.place_code order by e.position) filter (where x.place_code is not null) as places,
      array_agg(distinct b.command_system_code) as systems
    from path_entries e
    join sections x on (x.club_id, x.code) = (e.club_id, e.section_code)
    join districts d on (d.club_id, d.code) = (x.club_id, x.district_code)
    join supplies b on (b.club_id, b.code) = (d.club_id, d.supply_code)
    where e.train_id = t.id
  ) ends
  where c.code = $1 and s.code = $2`;

const DUTIES = `
  select d.code, 'duty' as kind, d.requires,
    (extract(epoch from coalesce(d.starts_at, sl.starts_at)) * 1000)::float8 as "startMs",
    (extract(epoch from coalesce(d.ends_at, sl.ends_at)) * 1000)::float8 as "endMs",
    d.place_code as "firstPlace", d.place_code as "lastPlace", array[d.place_code] as places, '{}'::text[] as systems
  from duties d
  join slots sl on (sl.session_id, sl.code) = (d.session_id, d.slot_code)
  join sessions s on s.id = d.session_id
  join clubs c on c.id = s.club_id
  where c.code = $1 and s.code = $2`;

const JOB_OF = `
  join sessions s on s.id = x.session_id
  join clubs c on c.id = s.club_id
  left join trains t on t.id = x.train_id
  left join duties d on d.id = x.duty_id
  where c.code = $1 and s.code = $2`;

const CLAIMS = `
  select x.id, coalesce(t.code, d.code) as job, x.member_code as member, x.handset_code as handset,
    (extract(epoch from x.from_at) * 1000)::float8 as "fromMs",
    (extract(epoch from x.until_at) * 1000)::float8 as "untilMs"
  from claims x ${JOB_OF}`;

const QUEUE = `
  select coalesce(t.code, d.code) as job, x.member_code as member from queue_places x ${JOB_OF} order by x.number`;

/** One moment of a night, read on a connection of its own with nothing of the service's code. */
export async function readTables(
  connection: pg.ClientConfig,
  club: string,
  session: string,
): Promise<NightFacts> {
  const client = new pg.Client(connection);
  await client.connect();
  try {
    await client.query("begin isolation level repeatable read read only");
    const rows = async <Row extends pg.QueryResultRow>(sql: string, values: string[] = [club, session]) =>
      (await client.query<Row>(sql, values)).rows;
    return { ...(await readFigures(client, club, session)), ...(await readRecords(rows, club)) };
  } finally {
    await client.end();
  }
}

type Read = <Row extends pg.QueryResultRow>(sql: string, values?: string[]) => Promise<Row[]>;

async function readRecords(rows: Read, club: string) {
  const members = `select m.code, m.passed_for as "passedFor", m.junior from members m
    join clubs c on c.id = m.club_id where c.code = $1`;
  const attending = `select x.member_code as member from booking_attendees x
    join sessions s on s.id = x.session_id join clubs c on c.id = s.club_id where c.code = $1 and s.code = $2`;
  const walks = `select w.from_code || '>' || w.to_code as way, w.seconds from walks w
    join clubs c on c.id = w.club_id where c.code = $1`;
  return {
    members: byCode(await rows<MemberFact & pg.QueryResultRow>(members, [club])),
    handsets: byCode(await rows<HandsetFact & pg.QueryResultRow>(HANDSETS, [club])),
    jobs: byCode([...(await rows<JobRow>(TRAINS)), ...(await rows<JobRow>(DUTIES))]),
    attending: new Set((await rows<{ member: string }>(attending)).map(({ member }) => member)),
    walks: new Map(
      (await rows<{ way: string; seconds: number }>(walks, [club])).map(({ way, seconds }) => [way, seconds]),
    ),
    claims: await rows<ClaimFact & pg.QueryResultRow>(CLAIMS),
    queue: await rows<WaitFact & pg.QueryResultRow>(QUEUE),
  };
}

type JobRow = JobFact & pg.QueryResultRow;
type Figures = Pick<NightFacts, "state" | "pickUpMs" | "handInMs">;

/** The night's own policy where it has one, else the club's: as the records say, not as the booking kept it. */
async function readFigures(client: pg.Client, club: string, session: string): Promise<Figures> {
  const sql = `
    select b.state, coalesce(s.pick_up_ms, c.pick_up_ms) as "pickUpMs", coalesce(s.hand_in_ms, c.hand_in_ms) as "handInMs"
    from sessions s join clubs c on c.id = s.club_id left join bookings b on b.session_id = s.id
    where c.code = $1 and s.code = $2`;
  const [figures] = (await client.query<Figures>(sql, [club, session])).rows;
  if (!figures) throw new Error(`there is no night ${session} of ${club}`);
  return figures;
}

function byCode<Row extends { readonly code: string }>(rows: readonly Row[]): Map<string, Row> {
  const found = new Map(rows.map((row) => [row.code, row]));
  if (found.size < rows.length) throw new Error("two have the same code");
  return found;
}
