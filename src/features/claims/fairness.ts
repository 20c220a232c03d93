import type { Fairness } from "../../../shared/claims.ts";
import type { Database } from "../../database/client.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import { reachClub } from "../../records/reach-club.ts";

interface FairnessRow {
  readonly member: string;
  readonly name: string;
  readonly nights: number;
  readonly trains: number;
  readonly drivenMs: number;
  readonly duties: number;
  readonly dutyMs: number;
  readonly coming: number;
}

/**
 * Who has driven how much in a year of the club's calendar. A night counts that was run, by the start of what was done; a
 * train from departure to arrival, without the handing over of its handset.
 */
export async function readFairness(database: Database, clubCode: string, year: number): Promise<Fairness> {
  const { id, timeZone } = await reachClub(database, clubCode);
  const [from, to] = [firstInstant(year, timeZone), firstInstant(year + 1, timeZone)];
  const rows = await database.$queryRaw<FairnessRow[]>`
    with done as (
      select c.member_code, c.session_id, c.train_id is not null as is_train, b.state in ('running', 'finished') as is_done,
        greatest(0, extract(epoch from c.until_at - c.from_at) * 1000
          - case when c.train_id is null then 0 else b.pick_up_ms + b.hand_in_ms end) as ms
      from claims c join bookings b on b.session_id = c.session_id
      where c.club_id = ${id}::uuid and b.state in ('open', 'locked', 'running', 'finished')
        and c.from_at >= ${from} and c.from_at < ${to}
    )
    select m.code as member, m.name,
      (count(distinct d.session_id) filter (where d.is_done))::int as nights,
      (count(*) filter (where d.is_done and d.is_train))::int as trains,
      coalesce(sum(d.ms) filter (where d.is_done and d.is_train), 0)::float8 as "drivenMs",
      (count(*) filter (where d.is_done and not d.is_train))::int as duties,
      coalesce(sum(d.ms) filter (where d.is_done and not d.is_train), 0)::float8 as "dutyMs",
      (count(*) filter (where not d.is_done and d.is_train))::int as coming
    from members m left join done d on d.member_code = m.code
    where m.club_id = ${id}::uuid
    group by m.code, m.name
    order by "drivenMs", trains, coming, m.code`;
  return {
    year,
    items: rows.map(({ drivenMs, dutyMs, ...row }) => ({
      ...row,
      drivenMinutes: Math.round(drivenMs / 60_000),
      dutyMinutes: Math.round(dutyMs / 60_000),
    })),
  };
}

/** No zone has skipped or repeated a New Year's midnight since 1900; should one, the hour after is as good. */
function firstInstant(year: number, timeZone: string): Date {
  for (const time of ["00:00", "01:00"]) {
    const read = readWallTime(`${year}-01-01T${time}`, timeZone);
    if ("instant" in read) return read.instant;
  }
  return new Date(Date.UTC(year, 0, 1));
}
