import { z } from "zod";
import { LIMITS } from "./limits.ts";
import { tag } from "./members.ts";
import { code, layoutTime, lengthMm, name, note } from "./units.ts";
import { LOCOMOTIVE_POSITIONS, TIMETABLE_STATES } from "./vocabulary.ts";

/**
 * One section of a path. The first entry has a departure, the last an arrival; one between them may have both (equal:
 * a pass) and is then a call, or neither.
 */
export const pathEntry = z
  .strictObject({
    section: code,
    arrive: layoutTime.nullable().default(null),
    depart: layoutTime.nullable().default(null),
  })
  .meta({ id: "PathEntry" });

export const motivePower = z
  .strictObject({ locomotive: code, position: z.enum(LOCOMOTIVE_POSITIONS).default("head") })
  .meta({ id: "MotivePower" });

/** One working: what runs, over which sections, when, by the layout clock. */
export const train = z
  .strictObject({
    code: code.meta({ description: "Train number, unique in its timetable version." }),
    name,
    priority: z.int().min(1).max(9).default(5).meta({ description: "1 is left out last, 9 first." }),
    earlierMinutes: z.number().min(0).max(1_440).default(0).meta({
      description: "Layout minutes the whole train may move earlier.",
    }),
    laterMinutes: z.number().min(0).max(1_440).default(0),
    motivePower: z.array(motivePower).max(8).default([]),
    rakes: z.array(code).max(8).default([]),
    lengthMm: lengthMm.nullable().default(null).meta({
      description: "Train length where it is not the sum of its locomotives and rakes.",
    }),
    placedAt: layoutTime
      .nullable()
      .default(null)
      .meta({ description: "Layout time its stock is placed by hand." }),
    removedAt: layoutTime
      .nullable()
      .default(null)
      .meta({ description: "Layout time its stock is removed by hand." }),
    requires: z.array(tag).max(20).default([]).meta({ description: "What its driver must be passed for." }),
    path: z.array(pathEntry).min(2).max(LIMITS.pathEntries),
    note,
  })
  .meta({ id: "Train" });

export const timetable = z.strictObject({ code, name, note }).meta({ id: "Timetable" });

/** One version of a timetable; numbers count from 1. */
export const timetableVersion = z
  .strictObject({
    number: z.int().min(1).max(LIMITS.versions),
    state: z.enum(TIMETABLE_STATES).default("draft"),
    note,
  })
  .meta({ id: "TimetableVersion" });

/** What a new version starts from. */
export const newTimetableVersion = z
  .strictObject({
    from: z.int().min(1).max(LIMITS.versions).nullable().optional().meta({
      description: "Number of the version whose trains it copies; left out, the last one; null, none.",
    }),
    note,
  })
  .meta({ id: "NewTimetableVersion" });

export type PathEntry = z.output<typeof pathEntry>;
export type MotivePower = z.output<typeof motivePower>;
export type Train = z.output<typeof train>;
export type Timetable = z.output<typeof timetable>;
export type TimetableVersion = z.output<typeof timetableVersion>;
export type NewTimetableVersion = z.output<typeof newTimetableVersion>;
