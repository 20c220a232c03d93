import { z } from "zod";
import { finding } from "./check.ts";
import { tag } from "./members.ts";
import { recordState } from "./records.ts";
import { wallTime } from "./sessions.ts";
import { code, name, note } from "./units.ts";

/** What a night can be. One that nobody has done anything with yet is a draft. */
export const BOOKING_STATES = ["draft", "open", "locked", "running", "finished", "cancelled"] as const;

export type BookingState = (typeof BOOKING_STATES)[number];

/** Where a night may go from each state. Back to a draft gives up every claim: only a night without any may. */
export const BOOKING_MOVES = {
  draft: ["open", "cancelled"],
  open: ["locked", "draft", "cancelled"],
  locked: ["running", "open", "cancelled"],
  running: ["finished", "locked", "cancelled"],
  finished: ["running"],
  cancelled: ["draft"],
} as const satisfies Record<BookingState, readonly BookingState[]>;

const instant = z.iso.datetime().meta({ description: "Real time, UTC." });
const count = z.int().min(0);

/** How much of a night has somebody to do it. */
export const manning = z
  .object({
    trains: count.meta({ description: "Trains that depart within the slots." }),
    manned: count.meta({ description: "Of them, those with a driver." }),
    duties: count.meta({ description: "Standing duties." }),
    mannedDuties: count.meta({ description: "Of them, those that somebody has." }),
  })
  .meta({ id: "Manning" });

/** What stops one slot of a night, as its check found just now. */
export const slotBlock = z
  .object({
    slot: code,
    stops: z.array(finding).meta({ description: "Findings that stop it; empty where it runs." }),
    unfit: z
      .array(z.string())
      .meta({ description: "Why it could not be opened whatever the reason: a sentence each." }),
  })
  .meta({ id: "SlotBlock" });

/** What the secretary says of a night. */
export const bookingBody = z
  .strictObject({
    venueNote: note.meta({ description: "Where to come, where to park, what to bring." }),
    noteToAll: note.meta({ description: "Shown on top of everybody's board." }),
    secondClaimFrom: z.iso
      .datetime({ offset: true })
      .nullable()
      .default(null)
      .meta({ description: "Until then nobody may claim a second train of this night; null: no such rule." }),
    attending: z
      .array(code)
      .max(2_000)
      .default([])
      .meta({ description: "Members who will be there, with a train or without." }),
  })
  .meta({ id: "BookingBody" });

export const booking = z
  .object({
    session: code,
    name,
    startsAt: instant.meta({ description: "When its first slot starts." }),
    endsAt: instant.meta({ description: "When its last slot ends." }),
    state: z.enum(BOOKING_STATES).meta({ description: "How far it has come." }),
    mayMoveTo: z
      .array(z.enum(BOOKING_STATES))
      .meta({ description: "Where whoever asks may move it. A check may still stop its opening." }),
    reason: z
      .string()
      .nullable()
      .meta({ description: "Why it was opened although something stopped it, or why it was cancelled." }),
    venueNote: z.string(),
    noteToAll: z.string(),
    secondClaimFrom: instant.nullable(),
    attending: z.array(code),
    manning: manning.meta({ description: "Of all its slots." }),
    slots: z.array(
      z.object({ slot: code, name, startsAt: instant, endsAt: instant, manning }).meta({ id: "BookingSlot" }),
    ),
    blocks: z.array(slotBlock).nullable().meta({
      description:
        "One entry a slot, for whoever may book, while it is a draft; else null: it is not looked at.",
    }),
    version: recordState.version.meta({
      description: "Its ETag is this number in quotes; 1 without a change.",
    }),
  })
  .meta({ id: "Booking" });

/** One night in a list. */
export const bookingSummary = z
  .object({
    session: code,
    name,
    state: z.enum(BOOKING_STATES).meta({ description: "How far it has come." }),
    startsAt: instant,
    endsAt: instant,
    manning,
    mine: count.meta({ description: "Trains and duties that whoever asks has in it." }),
  })
  .meta({ id: "BookingSummary" });

export const bookingSummaries = z
  .object({ items: z.array(bookingSummary).meta({ description: "By start, soonest first." }) })
  .meta({ id: "BookingSummaries" });

export const newBookingMove = z
  .strictObject({
    to: z.enum(BOOKING_STATES).meta({ description: "Where it shall go." }),
    reason: z.string().trim().min(1).max(2_000).optional().meta({
      description: "Opens it although something stops it, or says why it is cancelled; it is kept.",
    }),
  })
  .meta({ id: "NewBookingMove" });

/** Says of oneself, or the secretary of anyone, who will be there. */
export const newComing = z
  .strictObject({
    member: code.optional().meta({ description: "Left out: oneself." }),
    coming: z.boolean().meta({ description: "False: not, or no longer." }),
  })
  .meta({ id: "NewComing" });

export const DUTY_KINDS = ["signalling", "yard", "marshal", "other"] as const;

/** A standing duty of a slot. */
export const duty = z
  .strictObject({
    code: code.meta({ description: "Unique in its slot." }),
    name,
    kind: z.enum(DUTY_KINDS).default("other").meta({ description: "What is to be done." }),
    place: code
      .nullable()
      .default(null)
      .meta({ description: "Where one stands; null: nowhere in particular." }),
    startsAt: wallTime.nullable().default(null).meta({ description: "null: when the slot starts." }),
    endsAt: wallTime.nullable().default(null).meta({ description: "null: when the slot ends." }),
    requires: z.array(tag).max(20).default([]).meta({ description: "What one must be passed for." }),
    note,
  })
  .meta({ id: "Duty" });

export type Booking = z.output<typeof booking>;
export type BookingBody = z.output<typeof bookingBody>;
export type BookingSummary = z.output<typeof bookingSummary>;
export type NewBookingMove = z.output<typeof newBookingMove>;
export type NewComing = z.output<typeof newComing>;
export type Manning = z.output<typeof manning>;
export type SlotBlock = z.output<typeof slotBlock>;
export type Duty = z.output<typeof duty>;
export type DutyKind = (typeof DUTY_KINDS)[number];
