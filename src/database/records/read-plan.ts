import type { LayoutDocument, PlanSlot, RosterDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Reading } from "../../../shared/readings.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { Database } from "../client.ts";
import type { Slot } from "../generated/client.ts";
import { clubTable } from "./clubs.ts";
import { commandSystemTable, controllerTable, districtTable, selectorTable, supplyTable } from "./feeds.ts";
import { handsetTable } from "./handsets.ts";
import { type CrewParts, readCrew } from "./read-crew.ts";
import { readBodies, readRecord } from "./read-records.ts";
import { readingTable } from "./readings.ts";
import { type ClubScope, clubScope, type Scope } from "./record-table.ts";
import { decoderTable, locomotiveTable, rakeTable } from "./roster.ts";
import { sessionTable } from "./sessions.ts";
import { shortTestTable } from "./short-tests.ts";
import { trainScope, trainTable } from "./timetables.ts";
import { areaTable, lineTable, linkTable, placeTable, sectionTable, walkTable } from "./track.ts";

/** A stored slot with both its clocks. */
export interface PlanSlotInfo {
  readonly code: string;
  readonly name: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  /** When the session's first slot starts: ms inside a plan count from here. */
  readonly sessionStartsAt: Date;
  /** Layout seconds since the timetable's midnight when the slot starts. */
  readonly layoutStartSeconds: number;
  readonly clockRatio: number;
  readonly areas: PlanSlot["areas"];
  readonly timeZone: string;
  readonly timetable: string;
  readonly timetableVersion: number;
}

/** Everything that the check of one stored slot needs. */
export interface PlanParts {
  readonly scale: number;
  /** The session's policy, or the club's where it has none of its own. */
  readonly policy: Policy;
  readonly layout: LayoutDocument;
  readonly roster: RosterDocument;
  readonly handsets: Handset[];
  readonly readings: Reading[];
  readonly trains: Train[];
  readonly slot: PlanSlotInfo;
  /** Who has which train, as claimed. */
  readonly crew: CrewParts;
  /** The other slots of the session: their locomotives' addresses are in use that night too. */
  readonly otherSlots: readonly OtherSlotParts[];
}

interface OtherSlotParts extends Pick<PlanSlotInfo, "startsAt" | "endsAt" | "layoutStartSeconds"> {
  /** All of its timetable version, whenever they depart. */
  readonly trains: readonly Train[];
}

/** What the checks of all slots of a club have in common. */
export type ClubParts = Pick<PlanParts, "scale" | "policy" | "layout" | "roster" | "handsets" | "readings">;

/**
 * Reads what the check of a stored slot needs, one query a table whatever the number of records; undefined where the
 * club has no such session, or the session no such slot. Bind it to a transaction to read everything as of one moment.
 */
export async function readPlanParts(
  database: Database,
  club: ClubScope,
  sessionCode: string,
  slotCode: string,
): Promise<PlanParts | undefined> {
  return readSlotParts(database, club, sessionCode, slotCode, await readClubParts(database, club));
}

/** As `readPlanParts`, where what the club's slots have in common is read already. */
export async function readSlotParts(
  database: Database,
  club: ClubScope,
  sessionCode: string,
  slotCode: string,
  common: ClubParts,
): Promise<PlanParts | undefined> {
  const session = await readRecord(database, sessionTable, clubScope(club), sessionCode);
  if (session === undefined) return undefined;
  const slots = await database.slot.findMany({
    where: { sessionId: session.id },
    orderBy: { startsAt: "asc" },
  });
  const slot = slots.find(({ code }) => code === slotCode);
  if (slot === undefined) return undefined;
  const trainsOf = createTrainReader(database, club);
  const otherSlots: OtherSlotParts[] = [];
  for (const other of slots)
    if (other.code !== slot.code)
      otherSlots.push({
        startsAt: other.startsAt,
        endsAt: other.endsAt,
        layoutStartSeconds: other.layoutStartS,
        trains: await trainsOf(other),
      });
  return {
    ...common,
    policy: session.body.policy ?? common.policy,
    trains: await trainsOf(slot),
    otherSlots,
    crew: await readCrew(database, club, session.id, slot.code),
    slot: {
      ...toSlotInfo(slot),
      sessionStartsAt: slots[0]?.startsAt ?? slot.startsAt,
      clockRatio: session.body.clockRatio,
      areas: session.body.areas,
      timeZone: club.timeZone,
    },
  };
}

/** The club's railway and stock, under the club's own policy. */
export async function readClubParts(database: Database, club: ClubScope): Promise<ClubParts> {
  const scope = clubScope(club);
  const { scale, policy } = clubTable.toBody(
    await database.club.findUniqueOrThrow({ where: { id: club.id } }),
    scope,
  );
  return {
    scale,
    policy,
    layout: await readLayout(database, scope),
    roster: await readRoster(database, scope),
    handsets: await readBodies(database, handsetTable, scope),
    readings: await readBodies(database, readingTable, scope),
  };
}

const toSlotInfo = (slot: Slot) => ({
  code: slot.code,
  name: slot.name,
  startsAt: slot.startsAt,
  endsAt: slot.endsAt,
  layoutStartSeconds: slot.layoutStartS,
  timetable: slot.timetableCode,
  timetableVersion: slot.timetableVersion,
});

/** Slots mostly run one version: each is read once. */
function createTrainReader(database: Database, club: ClubScope) {
  const read = new Map<string, Train[]>();
  return async ({ timetableCode, timetableVersion }: Slot) => {
    const key = `${timetableVersion} ${timetableCode}`;
    const trains =
      // a slot cannot name a version that is not there: the database keeps it
      read.get(key) ?? (await readTrains(database, club, timetableCode, timetableVersion)) ?? [];
    read.set(key, trains);
    return trains;
  };
}

/** All trains of a timetable version, whenever they depart; undefined where there is no such version. */
export async function readTrains(
  database: Database,
  club: ClubScope,
  timetableCode: string,
  number: number,
): Promise<Train[] | undefined> {
  const found = await database.timetableVersion.findUnique({
    where: { clubId_timetableCode_number: { clubId: club.id, timetableCode, number } },
    select: { id: true },
  });
  return found === null ? undefined : readBodies(database, trainTable, trainScope(club, found.id));
}

/** The whole railway of a club. */
export async function readLayout(database: Database, scope: Scope): Promise<LayoutDocument> {
  return {
    areas: await readBodies(database, areaTable, scope),
    places: await readBodies(database, placeTable, scope),
    walks: await readBodies(database, walkTable, scope),
    lines: await readBodies(database, lineTable, scope),
    commandSystems: await readBodies(database, commandSystemTable, scope),
    supplies: await readBodies(database, supplyTable, scope),
    districts: await readBodies(database, districtTable, scope),
    sections: await readBodies(database, sectionTable, scope),
    links: await readBodies(database, linkTable, scope),
    controllers: await readBodies(database, controllerTable, scope),
    selectors: await readBodies(database, selectorTable, scope),
    shortTests: await readBodies(database, shortTestTable, scope),
  };
}

/** All that a club runs on it. */
export async function readRoster(database: Database, scope: Scope): Promise<RosterDocument> {
  return {
    locomotives: await readBodies(database, locomotiveTable, scope),
    decoders: await readBodies(database, decoderTable, scope),
    rakes: await readBodies(database, rakeTable, scope),
  };
}
