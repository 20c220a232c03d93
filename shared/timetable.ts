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
  .strictObject({
    locomotive: code,
    position: z
      .enum(LOCOMOTIVE_POSITIONS)
      .default("head")
      .meta({ description: "Where in its train it stands." }),
  })
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
    laterMinutes: z
      .number()
      .min(0)
      .max(1_440)
      .default(0)
      .meta({ description: "Layout minutes the whole train may move later." }),
    motivePower: z
      .array(motivePower)
      .max(8)
      .default([])
      .meta({ description: "Its locomotives, from the head." }),
    rakes: z.array(code).max(8).default([]).meta({ description: "Its rakes, from the head." }),
    lengthMm: lengthMm.nullable().default(null).meta({
      description: "Train length where it is not the sum of its locomotives and rakes.",
    }),
    placedAt: layoutTime.nullable().default(null).meta({
      description:
        "Layout time its stock is placed by hand; stock that an earlier train left where this one departs, and that nobody removed, stands there already.",
    }),
    removedAt: layoutTime.nullable().default(null).meta({
      description: "Layout time its stock is removed by hand, if no later train has taken it by then.",
    }),
    requires: z.array(tag).max(20).default([]).meta({ description: "What its driver must be passed for." }),
    path: z.array(pathEntry).min(2).max(LIMITS.pathEntries).meta({
      description:
        "Sections in the order it runs over them. The first departs, the last arrives; one between may do both and is then a call (equal times: a pass), or neither. The same section twice in a row is a reversal.",
    }),
    note,
  })
  .meta({ id: "Train" });

export const timetable = z.strictObject({ code, name, note }).meta({ id: "Timetable" });

/** One version of a timetable; numbers count from 1. */
export const timetableVersion = z
  .strictObject({
    number: z.int().min(1).max(LIMITS.versions).meta({ description: "Its number in the timetable, from 1." }),
    state: z
      .enum(TIMETABLE_STATES)
      .default("draft")
      .meta({ description: "A draft may be changed; an issued version and its trains stay as they are." }),
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
