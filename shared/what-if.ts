import { z } from "zod";
import { checkReport, finding } from "./check.ts";
import { layoutDocument, rosterDocument } from "./documents.ts";
import { handset } from "./handsets.ts";
import { LIMITS } from "./limits.ts";
import { policy } from "./policy.ts";
import { timetableVersion } from "./timetable.ts";
import { code, note } from "./units.ts";

/** One thing tried on the trains of a slot. Each looks at what those before it left. */
export const tryStep = z
  .discriminatedUnion("do", [
    z.strictObject({
      do: z.literal("move"),
      train: code,
      minutes: z.number().min(-1_440).max(1_440).meta({
        description: "Layout minutes by which the whole train runs later; less than 0: earlier.",
      }),
    }),
    z.strictObject({
      do: z.literal("change-locomotive"),
      train: code,
      from: code.meta({ description: "The locomotive it has." }),
      to: code.meta({ description: "The one it gets in its place." }),
    }),
    z.strictObject({ do: z.literal("leave-rake"), train: code, rake: code }),
    z.strictObject({ do: z.literal("leave-train"), train: code }),
  ])
  .meta({ id: "TryStep" });

const steps = z
  .array(tryStep)
  .min(1)
  .max(200)
  .meta({ description: "In the order in which they were tried." });

export const tryRequest = z.strictObject({ steps }).meta({ id: "TryRequest" });

export const tryAnswer = z
  .strictObject({
    report: checkReport.meta({ description: "The check of the slot with all that is tried." }),
    appears: z.array(finding).meta({ description: "Findings that the slot as it is does not have." }),
    clears: z.array(finding).meta({ description: "Findings of the slot as it is that are gone." }),
    trains: z.array(code).meta({ description: "The trains that are changed or left out." }),
  })
  .meta({ id: "TryAnswer" });

export const keepRequest = z
  .strictObject({ steps, note: note.meta({ description: "What the new version's note says." }) })
  .meta({ id: "KeepRequest" });

export const keepAnswer = z
  .strictObject({ timetable: code, version: timetableVersion })
  .meta({ id: "KeepAnswer" });

/** Records as they would be: those named by code are replaced, others added, those under `removed` are gone. */
export const recordChanges = z
  .strictObject({
    layout: layoutDocument.prefault({}),
    roster: rosterDocument.prefault({}),
    handsets: z.array(handset).max(LIMITS.handsets).default([]),
    policy: policy.nullable().default(null).meta({
      description: "The club's policy as it would be; nights with a policy of their own keep theirs.",
    }),
    removed: z
      .partialRecord(
        z.enum([...Object.keys(layoutDocument.shape), ...Object.keys(rosterDocument.shape), "handsets"]),
        z.array(code).max(LIMITS.sections),
      )
      .default({})
      .meta({ description: 'Codes by kind, `{ "districts": ["D-West"] }`.' }),
  })
  .meta({ id: "RecordChanges" });

export const effectsRequest = z.strictObject({ changes: recordChanges }).meta({ id: "EffectsRequest" });

const verdict = z
  .strictObject({
    verdict: checkReport.shape.verdict,
    stops: z.int().meta({ description: "How many findings stop the slot." }),
    warnings: z.int().meta({ description: "How many findings warn." }),
  })
  .meta({ id: "Verdict" });

export const effect = z
  .strictObject({
    session: code,
    name: z.string(),
    slot: code,
    slotName: z.string(),
    startsAt: z.iso.datetime({ offset: true }),
    before: verdict.nullable().meta({ description: "As it is; none where it cannot be computed." }),
    after: verdict.nullable().meta({ description: "With the changes; none where it cannot be computed." }),
    breaks: z.boolean().meta({ description: "It runs as it is, and would not with the changes." }),
    appears: z.array(finding).meta({ description: "Findings that the changes bring, stopping ones first." }),
    appearsLeftOut: z.int().meta({ description: "Further ones that are not listed." }),
    clears: z.int().meta({ description: "How many findings the changes take away." }),
    hindrance: z
      .string()
      .nullable()
      .meta({ description: "Why it could not be computed with the changes: what does not fit together." }),
  })
  .meta({ id: "Effect" });

export const effectsAnswer = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    slots: z.array(effect).meta({ description: "The slots to come, soonest first." }),
    slotsLeftOut: z.int().meta({ description: "Slots farther ahead that were not looked at." }),
  })
  .meta({ id: "EffectsAnswer" });

export type TryStep = z.output<typeof tryStep>;
export type TryAnswer = z.output<typeof tryAnswer>;
export type KeepAnswer = z.output<typeof keepAnswer>;
export type RecordChanges = z.output<typeof recordChanges>;
export type Effect = z.output<typeof effect>;
export type EffectsAnswer = z.output<typeof effectsAnswer>;
