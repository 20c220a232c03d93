import { z } from "zod";
import { BOOKING_STATES } from "./booking.ts";
import { clockRatio, code, currentMa, layoutReading, layoutTime, name, note } from "./units.ts";
import { ADDRESS_KINDS, HANDSET_KINDS } from "./vocabulary.ts";

/** What became of a train: it waits, it has departed, it has arrived, or it is not run. */
export const TRAIN_STATES = ["waiting", "running", "arrived", "left out"] as const;
/** Where a handset is: on the desk, in somebody's hands, without charge, or broken. */
export const DESK_STATES = ["in", "out", "flat", "faulty"] as const;
export const CLOCK_STATES = ["not started", "running", "paused"] as const;
export const CLOCK_RUNS = ["start", "pause", "set"] as const;

export type TrainState = (typeof TRAIN_STATES)[number];
export type DeskState = (typeof DESK_STATES)[number];
export type ClockState = (typeof CLOCK_STATES)[number];
export type ClockRun = (typeof CLOCK_RUNS)[number];

const instant = z.iso.datetime().meta({ description: "Real time, UTC." });
const minutes = z.int().min(0).max(1_440);
const version = z.int().min(1).meta({ description: "Its ETag is this number in quotes." });
const person = z.object({ member: code, name }).meta({ id: "NightPerson" });

/** One thing done to the layout clock. */
export const clockChange = z
  .object({
    slot: code,
    run: z.enum(CLOCK_RUNS).meta({ description: "`set`: corrected to the layout time stated." }),
    at: instant,
    layout: layoutReading.meta({ description: "What the clock showed from then on." }),
    note,
  })
  .meta({ id: "ClockChange" });

/**
 * The layout clock of the slot that runs, or of the next to run. While it runs, it shows `layoutSeconds` + the real
 * seconds since `at` × `clockRatio`; else `layoutSeconds`.
 */
export const nightClock = z
  .object({
    slot: code,
    state: z.enum(CLOCK_STATES).meta({ description: "`not started`: it shows the slot's first reading." }),
    at: instant.meta({ description: "The service's time for which the reading holds." }),
    layout: layoutReading,
    layoutSeconds: z.number().meta({
      description:
        "The reading in seconds since the timetable's midnight; a running clock adds the real seconds since `at` × `clockRatio`.",
    }),
    clockRatio,
    since: instant.nullable().meta({ description: "When it was last started or paused." }),
    version: version.meta({ description: "Counts its changes; the ETag for a change of the clock." }),
    changes: z.array(clockChange).meta({ description: "All that was done to it tonight, in order." }),
  })
  .meta({ id: "NightClock" });

export const nightLocomotive = z
  .object({
    code,
    name,
    address: z
      .object({ kind: z.enum(ADDRESS_KINDS), number: z.int() })
      .nullable()
      .meta({ description: "What its decoder answers to; null: analog-only." }),
    replaces: code.nullable().meta({ description: "The locomotive of the timetable that it stands in for." }),
    failed: z.boolean().meta({ description: "It failed tonight, and the train has no other yet." }),
  })
  .meta({ id: "NightLocomotive" });

const end = z.object({
  place: code.nullable(),
  placeName: z.string().nullable(),
  road: code.meta({ description: "The section it stands in." }),
  roadName: z.string(),
  layout: layoutReading.meta({ description: "By the timetable." }),
  expectedLayout: layoutReading.meta({ description: "With what is known of its lateness." }),
});

export const nightTrain = z
  .object({
    slot: code,
    train: code,
    name,
    from: end,
    to: end,
    locomotives: z.array(nightLocomotive).meta({ description: "From the head, as they are tonight." }),
    driver: person.nullable().meta({ description: "Who has claimed it." }),
    handset: code.nullable().meta({ description: "The handset of the claim." }),
    state: z.enum(TRAIN_STATES).meta({ description: "`left out`: it is not run tonight." }),
    lateMinutes: z.int().min(0).meta({
      description: "Whole layout minutes late as things stand: stated, or found from the clock.",
    }),
    statedLateMinutes: minutes.nullable().meta({ description: "What was stated." }),
    departedAt: instant.nullable(),
    departedLayout: layoutReading.nullable(),
    arrivedAt: instant.nullable(),
    arrivedLayout: layoutReading.nullable(),
    note,
    version,
  })
  .meta({ id: "NightTrain" });

export const nightHandset = z
  .object({
    code,
    name,
    kind: z.enum(HANDSET_KINDS).meta({ description: "Plugged in, by radio, or mounted on one panel." }),
    state: z
      .enum([...DESK_STATES, "away"])
      .meta({ description: "`away`: by its record it is not at the club." }),
    holder: person.nullable(),
    since: instant.nullable().meta({ description: "Since when it is so; null: all night." }),
    batteryMinutes: z.int().nullable().meta({ description: "A charge; null: fed by its cable." }),
    batteryLeftMinutes: z
      .int()
      .min(0)
      .nullable()
      .meta({ description: "Of the charge, real minutes left after its time in hands tonight." }),
  })
  .meta({ id: "NightHandset" });

export const attendance = z
  .object({
    member: code,
    name,
    junior: z.boolean().meta({ description: "Needs a supervising adult." }),
    expected: z.boolean().meta({ description: "Has a train or a duty tonight." }),
    here: z.boolean().meta({ description: "Booked on, and not off again." }),
    since: instant.nullable().meta({ description: "When they were last booked on or off." }),
  })
  .meta({ id: "Attendance" });

/** What went wrong. */
export const incident = z
  .object({
    kind: z.enum(["trip", "failure", "clock"]).meta({
      description: "A breaker opened; a locomotive failed; the layout clock was corrected.",
    }),
    id: z.string(),
    at: instant,
    layout: layoutReading.nullable().meta({ description: "What the layout clock showed." }),
    sentence: z.string(),
    note,
    district: code.nullable(),
    measuredMa: currentMa.nullable(),
    slot: code.nullable(),
    train: code.nullable(),
    locomotive: code.nullable().meta({ description: "The one that failed." }),
    replacement: code.nullable(),
  })
  .meta({ id: "Incident" });

/** All that the live board shows. */
export const night = z
  .object({
    session: code,
    name,
    timeZone: z.string(),
    booking: z.enum(BOOKING_STATES).meta({
      description:
        "The night is run while it is `running`; starting the clock of a locked night makes it so.",
    }),
    clock: nightClock,
    slots: z.array(z.object({ code, name, startsAt: instant, endsAt: instant, layoutStart: layoutReading })),
    next: z
      .array(z.object({ slot: code, train: code }))
      .meta({ description: "The trains still to depart in the clock's slot, soonest first." }),
    trains: z.array(nightTrain).meta({ description: "By slot, departure and code." }),
    handsets: z.array(nightHandset),
    attendance: z.array(attendance).meta({ description: "Who is here, or expected; by name." }),
    incidents: z.array(incident).meta({ description: "Latest first." }),
  })
  .meta({ id: "Night" });

/** Start or pause the clock of a slot, or correct it. Starting another slot's clock ends that of the slot before. */
export const newClockChange = z
  .strictObject({
    slot: code.optional().meta({ description: "Left out: the slot whose clock the night shows." }),
    run: z.enum(CLOCK_RUNS).meta({ description: "`set` corrects it, and needs a note." }),
    layout: layoutTime.optional().meta({ description: "With `set`: what the clock shows from now on." }),
    note,
  })
  .check((ctx) => {
    const { run, layout, note: why } = ctx.value;
    const wrong = (path: string, message: string) =>
      ctx.issues.push({ code: "custom", path: [path], input: ctx.value, message });
    if (run === "set" && layout === undefined) wrong("layout", "State what the clock shall show.");
    if (run === "set" && why.trim() === "") wrong("note", "Say why the clock is corrected.");
    if (run !== "set" && layout !== undefined)
      wrong("layout", "Only `set` takes a layout time: starting and pausing keep what the clock shows.");
  })
  .meta({ id: "NewClockChange" });

export const newAttendance = z
  .strictObject({ member: code, here: z.boolean().meta({ description: "Booked on, or off again." }) })
  .meta({ id: "NewAttendance" });

export const deskMove = z
  .strictObject({
    handset: code,
    to: z.enum(DESK_STATES).meta({
      description:
        "`faulty` marks its record too; `in` from there makes it ready again, from `flat` charged.",
    }),
    member: code.optional().meta({ description: "With `out`: into whose hands." }),
  })
  .check((ctx) => {
    const { to, member } = ctx.value;
    if ((to === "out") !== (member !== undefined))
      ctx.issues.push({
        code: "custom",
        path: ["member"],
        input: member,
        message: "Name the member where a handset goes out, and only there.",
      });
  })
  .meta({ id: "DeskMove" });

export const trainReport = z
  .strictObject({
    state: z.enum(TRAIN_STATES).meta({ description: "`running`: it has departed." }),
    lateMinutes: minutes
      .nullable()
      .default(null)
      .meta({ description: "Layout minutes late; null: as the clock finds it." }),
    note,
  })
  .meta({ id: "TrainReport" });

export const candidate = z
  .object({
    code,
    name,
    address: z.object({ kind: z.enum(ADDRESS_KINDS), number: z.int() }).nullable(),
    suits: z.boolean().meta({ description: "Nothing stands against it." }),
    reasons: z.array(z.string()).meta({ description: "Why not, a sentence each." }),
    warnings: z.array(z.string()).meta({ description: "It suits, but know this." }),
    neededFrom: layoutReading
      .nullable()
      .meta({ description: "When a later train of the slot departs with it; null: it is not needed again." }),
  })
  .meta({ id: "Candidate" });

export const candidates = z
  .object({ locomotive: code, items: z.array(candidate).meta({ description: "Those that suit first." }) })
  .meta({ id: "Candidates" });

export const newReplacement = z
  .strictObject({
    locomotive: code.meta({ description: "The one that failed, as it is in the train tonight." }),
    replacement: code.nullable().meta({ description: "What takes its place; null: nothing yet." }),
    note: note.meta({ description: "What is wrong with it; written on its record as a defect." }),
  })
  .meta({ id: "NewReplacement" });

export const newMending = z
  .strictObject({ locomotive: code.meta({ description: "One that failed in this train." }) })
  .meta({ id: "NewMending" });

export const newTrip = z
  .strictObject({
    district: code,
    measuredMa: currentMa.nullable().default(null).meta({ description: "What the meter showed, if read." }),
    at: z.iso.datetime({ offset: true }).optional().meta({ description: "When; left out: now." }),
    note,
  })
  .meta({ id: "NewTrip" });

export type Night = z.output<typeof night>;
export type NightClock = z.output<typeof nightClock>;
export type NightTrain = z.output<typeof nightTrain>;
export type NightLocomotive = z.output<typeof nightLocomotive>;
export type NightHandset = z.output<typeof nightHandset>;
export type Attendance = z.output<typeof attendance>;
export type Incident = z.output<typeof incident>;
export type Candidate = z.output<typeof candidate>;
export type Candidates = z.output<typeof candidates>;
export type NewClockChange = z.output<typeof newClockChange>;
export type NewAttendance = z.output<typeof newAttendance>;
export type DeskMove = z.output<typeof deskMove>;
export type TrainReport = z.output<typeof trainReport>;
export type NewReplacement = z.output<typeof newReplacement>;
export type NewTrip = z.output<typeof newTrip>;
