import type { LayoutDocument, PlanSlot, RosterDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { Control } from "../../../shared/vocabulary.ts";
import type { Database } from "../client.ts";
import { commandSystemTable, controllerTable, districtTable, selectorTable, supplyTable } from "./feeds.ts";
import { handsetTable } from "./handsets.ts";
import { hasPolicy, toPolicy } from "./policy.ts";
import { readBodies } from "./read-records.ts";
import { type ClubScope, clubScope, type Scope } from "./record-table.ts";
import { decoderTable, locomotiveTable, rakeTable } from "./roster.ts";
import { trainScope, trainTable } from "./timetables.ts";
import { areaTable, lineTable, linkTable, placeTable, sectionTable } from "./track.ts";

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
  readonly trains: Train[];
  readonly slot: PlanSlotInfo;
}

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
  const session = await readSession(database, club, sessionCode);
  const slot = session?.slots.find((candidate) => candidate.code === slotCode);
  if (session === null || slot === undefined) return undefined;
  const scope = clubScope(club);
  const layout = await readLayout(database, scope);
  const roster = await readRoster(database, scope);
  const handsets = await readBodies(database, handsetTable, scope);
  const trains = await readBodies(database, trainTable, trainScope(club, slot.runs.id));
  return {
    scale: session.club.scale,
    policy: toPolicy(hasPolicy(session) ? session : session.club),
    layout,
    roster,
    handsets,
    trains,
    slot: {
      code: slot.code,
      name: slot.name,
      startsAt: slot.startsAt,
      endsAt: slot.endsAt,
      sessionStartsAt: new Date(Math.min(...session.slots.map((each) => each.startsAt.getTime()))),
      layoutStartSeconds: slot.layoutStartS,
      clockRatio: session.clockRatio,
      areas: session.areas.map(({ areaCode, control }) => ({ area: areaCode, control: control as Control })),
      timeZone: club.timeZone,
      timetable: slot.timetableCode,
      timetableVersion: slot.timetableVersion,
    },
  };
}

const readSession = (database: Database, club: ClubScope, code: string) =>
  database.session.findUnique({
    where: { clubId_code: { clubId: club.id, code } },
    include: { club: true, areas: true, slots: { include: { runs: { select: { id: true } } } } },
  });

/** The whole railway of a club. */
export async function readLayout(database: Database, scope: Scope): Promise<LayoutDocument> {
  return {
    areas: await readBodies(database, areaTable, scope),
    places: await readBodies(database, placeTable, scope),
    lines: await readBodies(database, lineTable, scope),
    commandSystems: await readBodies(database, commandSystemTable, scope),
    supplies: await readBodies(database, supplyTable, scope),
    districts: await readBodies(database, districtTable, scope),
    sections: await readBodies(database, sectionTable, scope),
    links: await readBodies(database, linkTable, scope),
    controllers: await readBodies(database, controllerTable, scope),
    selectors: await readBodies(database, selectorTable, scope),
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
