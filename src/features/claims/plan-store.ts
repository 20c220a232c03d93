import type { AddressKind, Control, SectionWiring } from "../../../shared/vocabulary.ts";
import type { BookedNight } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import { handsetTable } from "../../database/records/handsets.ts";
import { readBodies } from "../../database/records/read-records.ts";
import { clubScope } from "../../database/records/record-table.ts";

/** A train of a timetable version with its path, as the plan of a night is made from it. */
export interface TrainRow {
  readonly id: string;
  readonly versionId: string;
  readonly code: string;
  readonly name: string;
  readonly priority: number;
  readonly requires: string[];
  readonly locomotives: string[];
  /** Layout seconds; null where it does not call. */
  readonly path: {
    readonly section: string;
    readonly arrive: number | null;
    readonly depart: number | null;
  }[];
}

export interface SlotRow {
  readonly code: string;
  readonly name: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly layoutStartS: number;
  readonly versionId: string;
  readonly issued: boolean;
}

export interface SectionRow {
  readonly code: string;
  readonly name: string;
  readonly place: string | null;
  readonly area: string;
  readonly wiring: SectionWiring;
  readonly changeover: boolean;
  readonly system: string | null;
}

export interface LocomotiveRow {
  readonly code: string;
  readonly name: string;
  readonly kind: AddressKind | null;
  readonly address: number | null;
}

export type PlanRows = Awaited<ReturnType<typeof readPlanRows>>;

/** Everything of a night that claims look at and do not change: one query a table. */
export async function readPlanRows(database: Database, night: BookedNight) {
  const { club, id } = night;
  const clubId = club.id;
  const slots = await readSlots(database, id);
  const versionIds = [...new Set(slots.map(({ versionId }) => versionId))];
  return {
    night,
    slots,
    trains: await readTrains(database, versionIds),
    duties: await readDuties(database, id),
    sections: await readSections(database, clubId),
    controls: await readControls(database, id),
    places: await database.place.findMany({
      where: { clubId },
      select: { code: true, name: true, xMm: true, yMm: true },
    }),
    walks: await database.walk.findMany({
      where: { clubId },
      select: { fromCode: true, toCode: true, seconds: true },
    }),
    members: await database.member.findMany({
      where: { clubId },
      select: { code: true, name: true, passedFor: true, junior: true },
    }),
    handsets: await readBodies(database, handsetTable, clubScope(club)),
    locomotives: await readLocomotives(database, clubId),
    walking: await readWalking(database, id),
  };
}

const readSlots = (database: Database, sessionId: string): Promise<SlotRow[]> =>
  database.$queryRaw<SlotRow[]>`
    select s.code, s.name, s.starts_at as "startsAt", s.ends_at as "endsAt", s.layout_start_s as "layoutStartS",
      v.id as "versionId", v.state = 'issued' as issued
    from slots s
    join timetable_versions v on (v.club_id, v.timetable_code, v.number) = (s.club_id, s.timetable_code, s.timetable_version)
    where s.session_id = ${sessionId}::uuid order by s.starts_at`;

const readTrains = (database: Database, versionIds: readonly string[]): Promise<TrainRow[]> =>
  database.$queryRaw<TrainRow[]>`
    select t.id, t.version_id as "versionId", t.code, t.name, t.priority, t.requires,
      array(select l.locomotive_code from train_locomotives l where l.train_id = t.id order by l.position) as locomotives,
      (select jsonb_agg(jsonb_build_object('section', p.section_code, 'arrive', p.arrive_s, 'depart', p.depart_s) order by p.position)
        from path_entries p where p.train_id = t.id) as path
    from trains t where t.version_id = any(${[...versionIds]}::uuid[]) order by t.code`;

const readDuties = (database: Database, sessionId: string): Promise<rows.Duty[]> =>
  database.duty.findMany({ where: { sessionId }, orderBy: { code: "asc" } });

const readSections = (database: Database, clubId: string): Promise<SectionRow[]> =>
  database.$queryRaw<SectionRow[]>`
    select x.code, x.name, x.place_code as place, x.area_code as area, x.wiring, x.changeover, u.command_system_code as system
    from sections x
    left join districts d on (d.club_id, d.code) = (x.club_id, x.district_code)
    left join supplies u on (u.club_id, u.code) = (d.club_id, d.supply_code)
    where x.club_id = ${clubId}::uuid`;

/** How the night reckons walks that nobody has measured: its own policy, or the club's. */
async function readWalking(database: Database, sessionId: string) {
  const [row] = await database.$queryRaw<{ detour: number; mmPerSecond: number }[]>`
    select coalesce(s.walking_detour, c.walking_detour) as detour,
      coalesce(s.walking_mm_per_second, c.walking_mm_per_second) as "mmPerSecond"
    from sessions s join clubs c on c.id = s.club_id where s.id = ${sessionId}::uuid`;
  return row;
}

async function readControls(database: Database, sessionId: string): Promise<Map<string, Control>> {
  const found = await database.sessionArea.findMany({
    where: { sessionId },
    select: { areaCode: true, control: true },
  });
  return new Map(found.map(({ areaCode, control }) => [areaCode, control as Control]));
}

const readLocomotives = (database: Database, clubId: string): Promise<LocomotiveRow[]> =>
  database.$queryRaw<LocomotiveRow[]>`
    select l.code, l.name, d.address_kind as kind, d.address
    from locomotives l left join decoders d on (d.club_id, d.locomotive_code) = (l.club_id, l.code)
    where l.club_id = ${clubId}::uuid`;

/**
 * Changes whenever any row that a plan is made from does: how many there are, how often they were changed, and when last.
 * One query over what is in memory anyway, a tenth of the work of reading it all.
 */
export async function readPlanStamp(database: Database, { id, club }: BookedNight): Promise<string> {
  const clubId = club.id;
  const [row] = await database.$queryRaw<{ stamp: string }[]>`
    select concat_ws(' ',
      (select concat(s.version, ' ', c.version) from sessions s join clubs c on c.id = s.club_id where s.id = ${id}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from sections where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from districts where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from supplies where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from places where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from walks where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from members where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from handsets where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from locomotives where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from decoders where club_id = ${clubId}::uuid),
      (select concat(count(*), ' ', sum(version), ' ', max(updated_at)) from duties where session_id = ${id}::uuid),
      (select string_agg(concat(v.id, ' ', v.state, ' ', t.n, ' ', t.sum, ' ', t.last), ' ' order by s.code)
        from slots s
        join timetable_versions v on (v.club_id, v.timetable_code, v.number) = (s.club_id, s.timetable_code, s.timetable_version)
        cross join lateral (select count(*) as n, sum(version) as sum, max(updated_at) as last from trains where version_id = v.id) t
        where s.session_id = ${id}::uuid)
    ) as stamp`;
  return row?.stamp ?? "";
}
