import { z } from "zod";
import { LIMITS } from "./limits.ts";
import { policy } from "./policy.ts";
import { clockRatio, code, layoutTime, name, note } from "./units.ts";
import { CONTROLS } from "./vocabulary.ts";

/**
 * A time on the club's wall clock, `2027-03-27T19:00`, or with its offset, `2027-03-27T19:00+00:00`. The offset is
 * needed only for an hour that comes twice; an hour that the clock change skips is refused. Answers carry the offset.
 */
export const wallTime = z
  .string()
  .regex(
    /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(Z|[+-]\d\d:\d\d)?$/,
    "Write a date and time as 2027-03-27T19:00, if need be with its offset: 2027-10-31T01:30+01:00.",
  )
  .meta({
    description:
      "Wall-clock time in the club's zone; the offset is needed only for an hour that comes twice.",
    examples: ["2027-03-27T19:00"],
  });

/** One stretch of a session during which one timetable version runs. */
export const slot = z
  .strictObject({
    code,
    name,
    startsAt: wallTime,
    endsAt: wallTime,
    layoutStart: layoutTime.meta({ description: "What the layout clock shows when the slot starts." }),
    timetable: code.meta({ description: "The timetable it runs." }),
    timetableVersion: z
      .int()
      .min(1)
      .max(LIMITS.versions)
      .meta({ description: "Number of its version; those trains run that depart within the slot." }),
  })
  .meta({ id: "Slot" });

export const areaControl = z
  .strictObject({ area: code, control: z.enum(CONTROLS).meta({ description: "What runs in it." }) })
  .meta({ id: "AreaControl" });

/** An operating session: one night. */
export const session = z
  .strictObject({
    code,
    name,
    clockRatio,
    areas: z.array(areaControl).max(LIMITS.areas).meta({
      description:
        "How each area is run; one entry an area. An area left out runs every section as it is wired.",
    }),
    policy: policy
      .nullable()
      .default(null)
      .meta({ description: "The session's own policy; none: the club's." }),
    slots: z.array(slot).min(1).max(LIMITS.slots),
    note,
  })
  .meta({ id: "Session" });

export type Slot = z.output<typeof slot>;
export type AreaControl = z.output<typeof areaControl>;
export type Session = z.output<typeof session>;
