import { z } from "zod";
import { handset } from "./handsets.ts";
import {
  area,
  commandSystem,
  controller,
  district,
  line,
  link,
  place,
  section,
  selector,
  supply,
  walk,
} from "./layout.ts";
import { LIMITS } from "./limits.ts";
import { member } from "./members.ts";
import { policy } from "./policy.ts";
import { reading } from "./readings.ts";
import { decoder, locomotive, rake } from "./roster.ts";
import { areaControl, session } from "./sessions.ts";
import { shortTest } from "./short-tests.ts";
import { timetable, timetableVersion, train } from "./timetable.ts";
import { clockRatio, code, layoutTime, scaleDenominator } from "./units.ts";

/** The railway as records. References are codes; every code they name must be in the same document. */
export const layoutDocument = z
  .strictObject({
    areas: z.array(area).max(LIMITS.areas).default([]),
    places: z.array(place).max(LIMITS.places).default([]),
    walks: z.array(walk).max(LIMITS.walks).default([]),
    lines: z.array(line).max(LIMITS.lines).default([]),
    commandSystems: z.array(commandSystem).max(LIMITS.commandSystems).default([]),
    supplies: z.array(supply).max(LIMITS.supplies).default([]),
    districts: z.array(district).max(LIMITS.districts).default([]),
    sections: z.array(section).max(LIMITS.sections).default([]),
    links: z.array(link).max(LIMITS.links).default([]),
    controllers: z.array(controller).max(LIMITS.controllers).default([]),
    selectors: z.array(selector).max(LIMITS.selectors).default([]),
    shortTests: z.array(shortTest).max(LIMITS.shortTests).optional().meta({
      description: "Left out of a plan: nothing is said of whether its districts were tested.",
    }),
  })
  .meta({ id: "LayoutDocument" });

export const rosterDocument = z
  .strictObject({
    locomotives: z.array(locomotive).max(LIMITS.locomotives).default([]),
    decoders: z.array(decoder).max(LIMITS.decoders).default([]),
    rakes: z.array(rake).max(LIMITS.rakes).default([]),
  })
  .meta({ id: "RosterDocument" });

/** The slot to check, by the layout clock. */
export const planSlot = z
  .strictObject({
    layoutStart: layoutTime,
    layoutEnd: layoutTime,
    clockRatio,
    areas: z.array(areaControl).max(LIMITS.areas).default([]),
  })
  .meta({ id: "PlanSlot" });

/** A train and who drives it. */
export const planTurn = z
  .strictObject({
    train: code,
    member: code,
    handset: code
      .nullable()
      .default(null)
      .meta({ description: "The one they have for it; none: not chosen." }),
  })
  .meta({ id: "PlanTurn" });

/** Everything one slot's check needs, with nothing stored: post it, get the findings. */
export const planDocument = z
  .strictObject({
    scale: scaleDenominator,
    policy: policy.prefault({}),
    layout: layoutDocument,
    roster: rosterDocument,
    handsets: z.array(handset).max(LIMITS.handsets).default([]),
    readings: z.array(reading).max(LIMITS.readings).default([]).meta({
      description: "What meters showed; those of locomotives count more than the roster's figures.",
    }),
    trains: z.array(train).max(LIMITS.trains),
    members: z.array(member).max(LIMITS.members).default([]),
    crew: z
      .array(planTurn)
      .max(LIMITS.trains)
      .default([])
      .meta({ description: "Who drives what, as far as it is known; each train once." }),
    slot: planSlot,
  })
  .meta({ id: "PlanDocument" });

export const timetableDocument = z
  .strictObject({
    ...timetable.shape,
    versions: z
      .array(
        z.strictObject({ ...timetableVersion.shape, trains: z.array(train).max(LIMITS.trains).default([]) }),
      )
      .max(LIMITS.versions)
      .default([]),
  })
  .meta({ id: "TimetableDocument" });

/** A club's records out and in. What a part leaves out stays as it is; what it names by code is made or changed. */
export const clubDocument = z
  .strictObject({
    layout: layoutDocument.optional(),
    roster: rosterDocument.optional(),
    handsets: z.array(handset).max(LIMITS.handsets).optional(),
    members: z.array(member).max(LIMITS.members).optional(),
    timetables: z.array(timetableDocument).max(LIMITS.timetables).optional(),
    sessions: z.array(session).max(LIMITS.sessions).optional(),
    readings: z.array(reading).max(LIMITS.readings).optional(),
  })
  .meta({ id: "ClubDocument" });

export type LayoutDocument = z.output<typeof layoutDocument>;
export type RosterDocument = z.output<typeof rosterDocument>;
export type PlanSlot = z.output<typeof planSlot>;
export type PlanDocument = z.output<typeof planDocument>;
export type TimetableDocument = z.output<typeof timetableDocument>;
export type ClubDocument = z.output<typeof clubDocument>;
