import { z } from "zod";
import { BOOKING_STATES, DUTY_KINDS } from "./booking.ts";
import { tag } from "./members.ts";
import { clockRatio, code, layoutReading, name } from "./units.ts";
import { ADDRESS_KINDS, HANDSET_KINDS, HANDSET_STATES } from "./vocabulary.ts";

/** Why somebody may not have a train or a duty. Each is the code of a refusal as well. */
export const CLAIM_HINDRANCES = [
  "session-not-open",
  "taken",
  "not-passed",
  "junior-alone",
  "drives-another-then",
  "walk-too-short",
  "second-claim-too-early",
  "handset-not-usable",
  "handset-taken",
] as const;

export type ClaimHindrance = (typeof CLAIM_HINDRANCES)[number];

const instant = z.iso.datetime().meta({ description: "Real time, UTC." });
const seconds = z.int().min(0).meta({ description: "Seconds of real time." });
const claimId = z.uuid().meta({ description: "Names the claim in addresses." });
const person = z.object({ member: code, name }).meta({ id: "ClaimPerson" });

/** One sentence about one thing that is in the way. */
export const hindrance = z
  .object({
    code: z.enum(CLAIM_HINDRANCES).meta({ description: "The refusal that a claim would meet." }),
    sentence: z.string(),
  })
  .meta({ id: "Hindrance" });

/** Where and when a train starts or ends, or a duty stands. */
export const claimEnd = z
  .object({
    place: code.nullable(),
    placeName: z.string().nullable(),
    road: code.nullable().meta({ description: "The section it stands in; null for a duty." }),
    roadName: z.string().nullable(),
    layout: layoutReading.meta({ description: "By the layout clock." }),
    at: instant.meta({ description: "Real time, while the layout clock runs as planned." }),
  })
  .meta({ id: "ClaimEnd" });

export const claimLocomotive = z
  .object({
    code,
    name,
    address: z
      .object({ kind: z.enum(ADDRESS_KINDS), number: z.int() })
      .nullable()
      .meta({ description: "What its decoder answers to; null: analog-only." }),
  })
  .meta({ id: "ClaimLocomotive" });

export const boardHandset = z
  .object({
    code,
    name,
    kind: z.enum(HANDSET_KINDS).meta({ description: "Plugged in, by radio, or on one panel." }),
    state: z.enum(HANDSET_STATES).meta({ description: "Whether it can be used." }),
    places: z.array(code).meta({ description: "Where it can be used; empty for radio: everywhere." }),
    batteryMinutes: z.int().nullable().meta({
      description: "Real minutes a charge lasts; null: fed by its cable.",
    }),
  })
  .meta({ id: "BoardHandset" });

/** What drives a train: a handset, the outputs of a controller at its panel, or first one and then the other. */
export const TRAIN_CONTROLS = ["handset", "controller", "both"] as const;

export const claim = z
  .object({
    id: claimId,
    slot: code,
    kind: z.enum(["train", "duty"]).meta({ description: "A train to drive, or a standing duty." }),
    code: code.meta({ description: "Of the train or the duty." }),
    member: code,
    name,
    handset: code.nullable().meta({ description: "null: it needs none." }),
    from: instant.meta({ description: "From the pick-up of the handset; for a duty, its start." }),
    until: instant.meta({ description: "Until the handset is handed in; for a duty, its end." }),
    assigned: z.boolean().meta({ description: "By the secretary, not claimed." }),
    problems: z.array(hindrance).meta({
      description: "What has come in its way since it was made, such as a handset that broke.",
    }),
  })
  .meta({ id: "Claim" });

/** An offer to trade two claims. */
export const swap = z
  .object({
    id: z.uuid(),
    from: person,
    to: person,
    gives: z.object({ claim: claimId, slot: code, kind: z.enum(["train", "duty"]), code }),
    wants: z.object({ claim: claimId, slot: code, kind: z.enum(["train", "duty"]), code }),
    message: z.string(),
    offeredAt: instant,
  })
  .meta({ id: "Swap" });

/** What a train and a duty of a board have in common. */
const boardRow = {
  code,
  name,
  requires: z.array(tag).meta({ description: "What one must be passed for." }),
  from: claimEnd,
  to: claimEnd,
  pickUpAt: instant.meta({ description: "When one must be there." }),
  handInAt: instant.meta({ description: "When one is free again." }),
  claim: claim.nullable().meta({ description: "Who has it; null: nobody." }),
  mine: z.boolean().meta({ description: "Whoever asks has it." }),
  queue: z.object({
    length: z.int().min(0),
    place: z
      .int()
      .min(1)
      .nullable()
      .meta({ description: "Where whoever asks stands in it, from 1; null: not in it." }),
  }),
  may: z.boolean().meta({ description: "Whether whoever asks may claim it now." }),
  why: hindrance.nullable().meta({ description: "Why not, in a sentence; null where they may, or have it." }),
  mayQueue: z.boolean().meta({ description: "Taken, and whoever asks may wait for it." }),
  walk: z
    .object({
      from: code.nullable().meta({ description: "The place where what they have before ends." }),
      fromName: z.string().nullable(),
      seconds: seconds.meta({ description: "How long one walks from there." }),
      spareSeconds: z.int().meta({ description: "Time between the two, less the walk." }),
    })
    .nullable()
    .meta({ description: "For whoever asks; null: they have nothing before it." }),
};

export const boardTrain = z
  .object({
    ...boardRow,
    priority: z.int().meta({ description: "1 is left out last, 9 first." }),
    calls: z.int().min(0).meta({ description: "Calls on the way." }),
    locomotives: z.array(claimLocomotive).meta({ description: "From the head." }),
    control: z.enum(TRAIN_CONTROLS).meta({ description: "What drives it." }),
    handset: code.nullable().meta({
      description: "The fitting one that a claim would take; null: none is free, or it needs none.",
    }),
    handsets: z.array(code).meta({ description: "All that fit and are free then, the best first." }),
  })
  .meta({ id: "BoardTrain" });

export const boardDuty = z
  .object({
    ...boardRow,
    kind: z.enum(DUTY_KINDS).meta({ description: "What is to be done." }),
    note: z.string(),
  })
  .meta({ id: "BoardDuty" });

/** One thing of somebody's evening. */
export const eveningItem = z
  .object({
    claim,
    name: name.meta({ description: "Of the train or the duty." }),
    from: claimEnd,
    to: claimEnd,
    pickUpAt: instant,
    handInAt: instant,
    locomotives: z.array(claimLocomotive),
    control: z.enum(TRAIN_CONTROLS).nullable().meta({ description: "null for a duty." }),
    handset: boardHandset.nullable(),
    walkSeconds: seconds
      .nullable()
      .meta({ description: "From where the item before ends; null: none before." }),
    takesOverFrom: z.object({ train: code, driver: person.nullable() }).nullable().meta({
      description: "The train that brought its locomotive, and who drove it; null: it stands there.",
    }),
    handsOverTo: z
      .object({ train: code, driver: person.nullable() })
      .nullable()
      .meta({ description: "The train that its locomotive runs next; null: none." }),
    handsetFrom: person
      .nullable()
      .meta({ description: "Who has the handset before; null: it is on the desk." }),
    handsetTo: person.nullable().meta({ description: "Who has the handset next; null: back to the desk." }),
  })
  .meta({ id: "EveningItem" });

export const myEvening = z
  .object({
    session: code,
    name,
    state: z.enum(BOOKING_STATES).meta({ description: "How far the night has come." }),
    timeZone: z.string(),
    venueNote: z.string(),
    noteToAll: z.string(),
    member: person.nullable().meta({ description: "Whose; null: whoever asks is in no list of members." }),
    items: z.array(eveningItem).meta({ description: "By time." }),
  })
  .meta({ id: "MyEvening" });

/** Everything that the claim board of a slot shows to one member. */
export const board = z
  .object({
    session: code,
    sessionName: name,
    slot: code,
    slotName: name,
    slots: z.array(z.object({ code, name })).meta({ description: "All slots of the night, in order." }),
    state: z.enum(BOOKING_STATES).meta({ description: "How far the night has come." }),
    timeZone: z.string(),
    startsAt: instant,
    endsAt: instant,
    layoutStart: layoutReading,
    clockRatio,
    venueNote: z.string(),
    noteToAll: z.string(),
    secondClaimFrom: instant.nullable(),
    me: z
      .object({ member: code, name, junior: z.boolean(), passedFor: z.array(tag), coming: z.boolean() })
      .nullable()
      .meta({ description: "Whoever asks; null: in no list of members." }),
    evening: z.array(eveningItem).meta({ description: "What they have in the whole night." }),
    trains: z.array(boardTrain).meta({ description: "By departure." }),
    duties: z.array(boardDuty).meta({ description: "By start." }),
    handsets: z.array(boardHandset).meta({ description: "Those that any row of the board names." }),
    swaps: z.array(swap).meta({ description: "Offers to and from whoever asks." }),
  })
  .meta({ id: "Board" });

const what = {
  train: code.optional().meta({ description: "Its code; name either a train or a duty." }),
  duty: code.optional(),
};
const member = code
  .optional()
  .meta({ description: "Left out: oneself. Only the secretary may name others." });
const handset = code.optional().meta({ description: "Left out: the service chooses a fitting one." });

const nameOne = (value: { train?: string | undefined; duty?: string | undefined }) =>
  (value.train === undefined) !== (value.duty === undefined);
const NAME_ONE = { message: "Name either a train or a duty." };

export const newClaim = z
  .strictObject({ ...what, member, handset })
  .refine(nameOne, NAME_ONE)
  .meta({ id: "NewClaim" });

/** Another handset for a claim that is made. */
export const newHandsetChoice = z.strictObject({ handset: code }).meta({ id: "NewHandsetChoice" });

/** To be given it, once, when whoever has it gives it back. */
export const newQueuePlace = z
  .strictObject({ ...what, member })
  .refine(nameOne, NAME_ONE)
  .meta({ id: "NewQueuePlace" });

export const queuePlace = z
  .object({
    id: z.uuid(),
    slot: code,
    kind: z.enum(["train", "duty"]).meta({ description: "A train to drive, or a standing duty." }),
    code,
    member: code,
    place: z.int().min(1).meta({ description: "From 1." }),
    length: z.int().min(1).meta({ description: "How many wait." }),
  })
  .meta({ id: "QueuePlace" });

export const newSwap = z
  .strictObject({
    gives: claimId.meta({ description: "One's own claim." }),
    wants: claimId.meta({ description: "The claim of another, of the same night." }),
    message: z.string().max(500).default(""),
  })
  .meta({ id: "NewSwap" });

/** Who shall have a train or a duty; whoever had it is told. */
export const newAssignment = z
  .strictObject({
    ...what,
    member: code.nullable().meta({ description: "null: nobody." }),
    handset,
  })
  .refine(nameOne, NAME_ONE)
  .meta({ id: "NewAssignment" });

/** What giving back brought about. */
export const givenBack = z
  .object({
    claim: claim.meta({ description: "What was given back." }),
    next: claim.nullable().meta({ description: "Whoever waited and has it now; null: it is free." }),
  })
  .meta({ id: "GivenBack" });

export const assigned = z
  .object({ before: claim.nullable(), now: claim.nullable() })
  .meta({ id: "Assigned" });

export const swapped = z
  .object({ claims: z.array(claim).meta({ description: "Both, as they are now." }) })
  .meta({ id: "Swapped" });

/** Who has driven how much. */
export const fairness = z
  .object({
    year: z.int().meta({ description: "As the club's calendar has it." }),
    items: z
      .array(
        z
          .object({
            member: code,
            name,
            nights: z.int().min(0).meta({ description: "Nights with a train or a duty." }),
            trains: z.int().min(0).meta({ description: "Trains driven." }),
            drivenMinutes: z.int().min(0).meta({ description: "Real minutes from departure to arrival." }),
            duties: z.int().min(0).meta({ description: "Standing duties done." }),
            dutyMinutes: z.int().min(0).meta({ description: "Real minutes of those." }),
            coming: z.int().min(0).meta({ description: "Trains of nights still to come." }),
          })
          .meta({ id: "FairnessItem" }),
      )
      .meta({ description: "Every member; who has driven least first." }),
  })
  .meta({ id: "Fairness" });

export type Hindrance = z.output<typeof hindrance>;
export type Claim = z.output<typeof claim>;
export type ClaimEnd = z.output<typeof claimEnd>;
export type ClaimLocomotive = z.output<typeof claimLocomotive>;
export type Board = z.output<typeof board>;
export type BoardTrain = z.output<typeof boardTrain>;
export type BoardDuty = z.output<typeof boardDuty>;
export type BoardHandset = z.output<typeof boardHandset>;
export type EveningItem = z.output<typeof eveningItem>;
export type MyEvening = z.output<typeof myEvening>;
export type Swap = z.output<typeof swap>;
export type Swapped = z.output<typeof swapped>;
export type NewClaim = z.output<typeof newClaim>;
export type NewQueuePlace = z.output<typeof newQueuePlace>;
export type QueuePlace = z.output<typeof queuePlace>;
export type NewSwap = z.output<typeof newSwap>;
export type NewAssignment = z.output<typeof newAssignment>;
export type Assigned = z.output<typeof assigned>;
export type GivenBack = z.output<typeof givenBack>;
export type Fairness = z.output<typeof fairness>;
export type TrainControl = (typeof TRAIN_CONTROLS)[number];
