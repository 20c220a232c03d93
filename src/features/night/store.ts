import type { BookedNight } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import { departsIn } from "../../planner/night/in-slot.ts";

/** A train of a slot as the timetable has it; layout times in seconds. */
export interface TimetableTrain {
  readonly slot: string;
  readonly code: string;
  readonly name: string;
  readonly fromSection: string;
  readonly toSection: string;
  readonly departS: number;
  readonly arriveS: number;
  /** From the head. */
  readonly locomotives: readonly string[];
}

export const readSlots = (database: Database, { id }: BookedNight): Promise<rows.Slot[]> =>
  database.slot.findMany({ where: { sessionId: id }, orderBy: { startsAt: "asc" } });

/** The trains of every slot, by slot, departure and code. Of their paths only the ends are read. */
export async function readTrains(
  database: Database,
  { club, clockRatio }: BookedNight,
  slots: readonly rows.Slot[],
): Promise<TimetableTrain[]> {
  const versions = await database.timetableVersion.findMany({
    where: {
      clubId: club.id,
      OR: slots.map(({ timetableCode, timetableVersion: number }) => ({ timetableCode, number })),
    },
    select: { id: true, timetableCode: true, number: true },
  });
  const found = await readEnds(
    database,
    versions.map(({ id }) => id),
  );
  return slots.flatMap((slot) => {
    const clocks = {
      lengthMs: slot.endsAt.getTime() - slot.startsAt.getTime(),
      layoutStartS: slot.layoutStartS,
      ratio: clockRatio,
    };
    const version = versions.find(
      ({ timetableCode, number }) => timetableCode === slot.timetableCode && number === slot.timetableVersion,
    );
    return found
      .filter(({ versionId, departS }) => versionId === version?.id && departsIn(clocks, departS))
      .map(({ versionId: _, ...train }) => ({ slot: slot.code, ...train }));
  });
}

interface TrainOfVersion extends Omit<TimetableTrain, "slot"> {
  readonly versionId: string;
}

const readEnds = (database: Database, versionIds: readonly string[]): Promise<TrainOfVersion[]> =>
  database.$queryRaw<TrainOfVersion[]>`
    select t.version_id as "versionId", t.code, t.name,
      first.section_code as "fromSection", last.section_code as "toSection",
      first.depart_s as "departS", last.arrive_s as "arriveS",
      array(select l.locomotive_code from train_locomotives l where l.train_id = t.id order by l.position) as locomotives
    from trains t
    join path_entries first on first.train_id = t.id and first.position = 0
    join lateral (
      select p.section_code, p.arrive_s from path_entries p where p.train_id = t.id order by p.position desc limit 1
    ) last on true
    where t.version_id = any(${[...versionIds]}::uuid[])
    order by first.depart_s, t.code`;

/** Where trains begin and end: the road and, where it is at one, the place. */
export interface Road {
  readonly code: string;
  readonly name: string;
  readonly place: { readonly code: string; readonly name: string } | null;
}

export async function readRoads(
  database: Database,
  { club }: BookedNight,
  codes: readonly string[],
): Promise<Map<string, Road>> {
  const found = await database.section.findMany({
    where: { clubId: club.id, code: { in: [...new Set(codes)] } },
    select: { code: true, name: true, place: { select: { code: true, name: true } } },
  });
  return new Map(found.map((road) => [road.code, road]));
}

/** A locomotive with what its decoder answers to; without a decoder it is analog-only. */
export interface RosterLocomotive {
  readonly code: string;
  readonly name: string;
  readonly decoder: {
    readonly kind: "short" | "long";
    readonly address: number;
    readonly analogAllowed: boolean;
  } | null;
}

/** The club's locomotives, by code; only those named, where given. */
export async function readLocomotives(
  database: Database,
  { club }: BookedNight,
  codes?: readonly string[],
): Promise<RosterLocomotive[]> {
  const found = await database.locomotive.findMany({
    where: { clubId: club.id, ...(codes && { code: { in: [...new Set(codes)] } }) },
    orderBy: { code: "asc" },
    select: {
      code: true,
      name: true,
      decoders: { select: { addressKind: true, address: true, analogAllowed: true } },
    },
  });
  return found.map(({ decoders: [decoder], ...locomotive }) => ({
    ...locomotive,
    decoder: decoder
      ? {
          kind: decoder.addressKind === "long" ? "long" : "short",
          address: decoder.address,
          analogAllowed: decoder.analogAllowed,
        }
      : null,
  }));
}

/** All that was recorded of the night so far, in order of time. */
export async function readLog(database: Database, { club, id }: BookedNight) {
  const where = { clubId: club.id, sessionId: id };
  return {
    clock: await readClockChanges(database, id),
    trains: await database.nightTrain.findMany({ where }),
    replacements: await database.nightReplacement.findMany({
      where,
      orderBy: [{ at: "asc" }, { id: "asc" }],
    }),
    trips: await database.nightTrip.findMany({ where, orderBy: [{ at: "asc" }, { id: "asc" }] }),
    attendances: await database.nightAttendance.findMany({ where, orderBy: { since: "asc" } }),
    // one that went out on another night and never came back is not on the desk tonight either
    handsets: await database.nightHandset.findMany({
      where: { clubId: club.id, OR: [{ sessionId: id }, { until: null }] },
      orderBy: [{ since: "asc" }, { id: "asc" }],
    }),
  };
}

export type NightLog = Awaited<ReturnType<typeof readLog>>;

export const readClockChanges = (database: Database, sessionId: string): Promise<rows.NightClockChange[]> =>
  database.nightClockChange.findMany({ where: { sessionId }, orderBy: { position: "asc" } });

export const readHandsets = (database: Database, { club }: BookedNight): Promise<rows.Handset[]> =>
  database.handset.findMany({ where: { clubId: club.id }, orderBy: { code: "asc" } });

export async function readMembers(
  database: Database,
  { club }: BookedNight,
  codes: readonly string[],
): Promise<Map<string, { readonly name: string; readonly junior: boolean }>> {
  const found = await database.member.findMany({
    where: { clubId: club.id, code: { in: [...new Set(codes)] } },
    select: { code: true, name: true, junior: true },
  });
  return new Map(found.map(({ code, ...member }) => [code, member]));
}
