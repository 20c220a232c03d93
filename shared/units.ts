import { z } from "zod";

/** A short name unique among its kind in the club, as written on a panel or a card: `L1`, `D-East`, `4711`. */
export const code = z
  .string()
  .regex(
    /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,39}$/u,
    "Use 1 to 40 letters, digits, dots, dashes or underscores, starting with a letter or digit.",
  )
  .meta({ description: "Short name, unique among its kind in the club.", examples: ["L1"] });

/** What people call it. */
export const name = z.string().trim().min(1).max(120).meta({ description: "What people call it." });

/** Free text for people; the planner never reads it. */
export const note = z.string().max(2_000).default("").meta({ description: "Free text for people." });

/** Length in whole millimetres, above 0. */
export const lengthMm = z.int().min(1).max(1_000_000).meta({ description: "Millimetres, whole, above 0." });

/** Current in whole milliamperes, 0 or more. */
export const currentMa = z.int().min(0).max(100_000).meta({ description: "Milliamperes, whole, 0 or more." });

/** A limit on current in whole milliamperes, above 0. */
export const limitMa = z.int().min(1).max(100_000).meta({ description: "Milliamperes, whole, above 0." });

/** Prototype speed in km/h. */
export const speedKmh = z.number().gt(0).max(500).meta({ description: "Prototype speed in km/h." });

/** A stretch of real time in seconds, to the millisecond. */
export const realSeconds = z
  .number()
  .min(0)
  .max(86_400)
  .multipleOf(0.001)
  .meta({ description: "Seconds of real time." });

/** Layout seconds that one real second brings: 4 means an hour of the timetable takes 15 minutes. */
export const clockRatio = z
  .number()
  .gt(0)
  .max(60)
  .meta({
    description: "Layout time = real time × this ratio. Above 0; 4 makes an hour take 15 minutes.",
    examples: [4],
  });

/** The scale's denominator: 87 for H0. */
export const scaleDenominator = z
  .number()
  .min(1)
  .max(1_000)
  .meta({ description: "Denominator of the scale: 87 for H0.", examples: [87] });

/**
 * A reading of the layout clock, `H:MM` or `H:MM:SS`. Hours run past 24 after midnight (`25:10`); the next day may
 * be stated instead (`1:10+1`).
 */
export const layoutTime = z
  .string()
  .regex(
    /^\d{1,2}:[0-5]\d(:[0-5]\d)?(\+[1-3])?$/,
    "Write the time as 19:35 or 19:35:30; after midnight as 25:10 or 1:10+1.",
  )
  .meta({
    description: "Layout time, 19:35 or 19:35:30; after midnight 25:10 or 1:10+1.",
    examples: ["19:35"],
  });

/** What the layout clock shows, as answers say it: hours run on for as long as need be. */
export const layoutReading = z
  .string()
  .regex(/^\d{2,}:[0-5]\d(:[0-5]\d)?$/)
  .meta({
    description: "What the layout clock shows: 19:35, 19:35:30, after midnight 25:10.",
    examples: ["19:35"],
  });
