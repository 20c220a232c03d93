import { z } from "zod";
import { READING_STATES } from "./readings.ts";
import { code, currentMa, layoutReading } from "./units.ts";
import { FIGURE_SOURCES } from "./vocabulary.ts";

const mA = z.number().meta({ description: "mA." });
const drawState = z.enum(["running", "standing"]).meta({ description: "What the locomotive was doing." });

export const estimate = z
  .strictObject({
    locomotive: code,
    name: z.string(),
    state: z.enum(READING_STATES).meta({ description: "What the locomotive was doing." }),
    rosterMa: currentMa,
    source: z.enum(FIGURE_SOURCES).meta({ description: "Where the roster has its figure from." }),
    readings: z.int().meta({ description: "How many readings there are." }),
    medianMa: mA.nullable().meta({ description: "Their median; none without readings." }),
    spreadMa: mA
      .nullable()
      .meta({ description: "Their median absolute deviation times 1.4826 (NIST e-Handbook 1.3.5.6)." }),
    usedMa: currentMa.meta({ description: "What checks reckon with." }),
    lowMa: currentMa.meta({ description: "It may be as low as this." }),
    highMa: z.int().meta({ description: "It may be as high as this." }),
    measured: z.boolean().meta({ description: "What is used was measured." }),
  })
  .meta({ id: "Estimate" });

export const estimates = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    items: z.array(estimate).meta({ description: "Each locomotive in each state." }),
  })
  .meta({ id: "Estimates" });

export const comparedReading = z
  .strictObject({
    reading: code,
    district: code,
    atLayout: layoutReading,
    readMa: currentMa,
    plannedMa: z.int().meta({ description: "What the plan says the district bears at that moment." }),
    differenceMa: z.int().meta({ description: "Read less planned." }),
    correctedMa: z.int().meta({ description: "Read less planned with the corrections." }),
    draws: z
      .array(
        z.strictObject({
          locomotive: code.nullable(),
          rake: code.nullable(),
          state: drawState,
          ma: z.int(),
        }),
      )
      .meta({ description: "Who the plan says draws it." }),
  })
  .meta({ id: "ComparedReading" });

export const correction = z
  .strictObject({
    locomotive: code,
    state: drawState,
    oldMa: currentMa,
    newMa: z.int().meta({ description: "What the readings make of it, mA." }),
    readings: z.int().meta({ description: "Readings in which it draws." }),
    version: z.int().meta({ description: "The locomotive's version: what to accept it on." }),
  })
  .meta({ id: "Correction" });

export const comparison = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    readings: z.array(comparedReading),
    corrections: z
      .array(correction)
      .meta({ description: "By least squares with nothing below 0; nothing is written." }),
    withheld: z.array(correction).meta({
      description:
        "Corrections that would follow too, but with which the readings come out no nearer while those of `leftAlone` stay as they are.",
    }),
    leftAlone: z
      .array(z.strictObject({ locomotive: code, state: drawState, ma: currentMa }))
      .meta({ description: "Draws that these readings do not tell apart." }),
    beforeMa: mA.meta({ description: "Root mean square of the differences." }),
    afterMa: mA.meta({ description: "The same with the corrections." }),
  })
  .meta({ id: "Comparison" });

export const acceptedCorrections = z
  .strictObject({
    corrections: z
      .array(z.strictObject({ locomotive: code, state: drawState, ma: currentMa, version: z.int().min(1) }))
      .min(1)
      .max(1_000)
      .superRefine((list, context) => {
        const told = new Set<string>();
        for (const [at, { locomotive, state }] of list.entries()) {
          if (told.has(`${state} ${locomotive}`))
            context.addIssue({
              code: "custom",
              path: [at],
              message: `Locomotive ${locomotive} ${state} is corrected twice: keep one.`,
            });
          told.add(`${state} ${locomotive}`);
        }
      })
      .meta({ description: "Each locomotive's state once, on the version it was proposed for." }),
  })
  .meta({ id: "AcceptedCorrections" });

export type Estimates = z.output<typeof estimates>;
export type EstimateRow = z.output<typeof estimate>;
export type Comparison = z.output<typeof comparison>;
export type AcceptedCorrections = z.output<typeof acceptedCorrections>;
