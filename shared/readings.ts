import { z } from "zod";
import { day } from "./short-tests.ts";
import { code, currentMa, layoutTime, note } from "./units.ts";

export const READING_ORIGINS = ["bench", "night"] as const;
export const READING_STATES = ["running", "standing", "stalled", "inrush"] as const;

/** What a meter showed: of one locomotive in one state, or of a district at a moment of a night. */
export const reading = z
  .strictObject({
    code,
    takenOn: day.meta({ description: "The day it was read." }),
    origin: z
      .enum(READING_ORIGINS)
      .meta({ description: "`bench`: alone, for the purpose. `night`: while trains ran." }),
    locomotive: code.nullable().default(null),
    state: z
      .enum(READING_STATES)
      .nullable()
      .default(null)
      .meta({ description: "What the locomotive was doing; none for a district." }),
    district: code.nullable().default(null),
    session: code.nullable().default(null).meta({ description: "The night of a district's reading." }),
    slot: code.nullable().default(null).meta({
      description:
        "The slot of a district's reading; none: it is not known in which, and nothing is compared with it.",
    }),
    layoutTime: layoutTime
      .nullable()
      .default(null)
      .meta({ description: "What the layout clock showed at a district's reading." }),
    ma: currentMa,
    note,
  })
  .check((ctx) => {
    const { locomotive, state, district, session, slot, layoutTime } = ctx.value;
    const ofLocomotive = [locomotive, state];
    const ofDistrict = [district, session, layoutTime];
    const isWhole = (some: readonly unknown[], others: readonly unknown[]) =>
      some.every((field) => field !== null) && others.every((field) => field === null);
    if (isWhole(ofLocomotive, [...ofDistrict, slot]) || isWhole(ofDistrict, ofLocomotive)) return;
    ctx.issues.push({
      code: "custom",
      path: [locomotive === null ? "district" : "locomotive"],
      input: ctx.value,
      message:
        "Give either a locomotive and its state, or a district with the night, slot and layout time of the reading.",
    });
  })
  .meta({ id: "Reading" });

export type Reading = z.output<typeof reading>;
export type ReadingState = (typeof READING_STATES)[number];
