import { z } from "zod";
import { code } from "./units.ts";

/** What leaves a trail. */
export const TRAIL_KINDS = [
  "club",
  "area",
  "place",
  "walk",
  "line",
  "section",
  "link",
  "command-system",
  "supply",
  "district",
  "controller",
  "selector",
  "short-test",
  "reading",
  "locomotive",
  "decoder",
  "rake",
  "locomotive-picture",
  "rake-picture",
  "handset",
  "member",
  "membership",
  "timetable",
  "timetable-version",
  "train",
  "session",
  "booking",
  "attendee",
  "duty",
  "claim",
  "queue",
  "swap",
  "clock",
  "attendance",
  "handset-desk",
  "train-state",
  "replacement",
  "trip",
] as const;
export type TrailKind = (typeof TRAIL_KINDS)[number];

export const TRAIL_DEEDS = ["made", "changed", "removed"] as const;
export type TrailDeed = (typeof TRAIL_DEEDS)[number];

const seq = z.int().min(1).meta({
  description: "Grows with every change of the club, with gaps; whoever has seen one has seen all before it.",
});
const kind = z.enum(TRAIL_KINDS).meta({ description: "What was changed." });
const deed = z.enum(TRAIL_DEEDS).meta({ description: "What was done to it." });
const codeThen = z.string().meta({
  description:
    "Code that it had: of a claim the train's or duty's, of what happens on a night whatever it happens to, of a swap its id.",
});

export const trailEntry = z
  .object({
    seq,
    at: z.iso.datetime().meta({ description: "When, UTC." }),
    by: z
      .object({
        person: z.uuid().meta({ description: "Send it as `person` to see all that they did." }),
        member: code.nullable().meta({ description: "Who they are in the club; null once they left." }),
        name: z.string().nullable().meta({ description: "Null once their account was erased." }),
      })
      .nullable()
      .meta({
        description:
          "Who. Null for the service itself, for work without an account, and for people forgotten.",
      }),
    kind,
    code: codeThen,
    deed,
    session: code.nullable().meta({ description: "The night that it belongs to." }),
    slot: code.nullable().meta({ description: "The slot that it belongs to." }),
    timetableVersion: z
      .string()
      .nullable()
      .meta({ description: "Timetable and number of the version that a train is of." }),
    changes: z
      .array(
        z.object({
          field: z.string(),
          from: z.unknown().meta({ description: "Null where there was nothing." }),
          to: z.unknown().meta({ description: "Null where there is nothing now." }),
          withheld: z
            .boolean()
            .meta({ description: "Its content is not kept here: a secret, or something about a person." }),
        }),
      )
      .meta({
        description:
          "What is different now. Lists hold the parts that went and the parts that came, such as calls of a path.",
      }),
  })
  .meta({ id: "TrailEntry" });
export type TrailEntry = z.output<typeof trailEntry>;

/** What the stream of events says of one change. It holds no content: whoever shows it reads it again. */
export const clubEvent = z
  .object({ seq, kind, code: codeThen, deed, session: code.optional() })
  .meta({ id: "ClubEvent" });
export type ClubEvent = z.output<typeof clubEvent>;
