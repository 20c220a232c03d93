import { z } from "zod";

/** The parts of a club document that can be had one by one. */
export const DOCUMENT_PARTS = [
  "layout",
  "roster",
  "handsets",
  "members",
  "timetables",
  "sessions",
  "readings",
] as const;

export type DocumentPart = (typeof DOCUMENT_PARTS)[number];

/** What an import did, or would do, to the records of one kind. */
export const importCount = z
  .strictObject({
    kind: z.string().meta({ description: "As the collection is called.", examples: ["sections"] }),
    made: z.int().min(0).meta({ description: "Not there before." }),
    changed: z.int().min(0).meta({ description: "There before, and different." }),
    unchanged: z.int().min(0).meta({ description: "Named with exactly what they were." }),
  })
  .meta({ id: "ImportCount" });

export const importResult = z
  .strictObject({
    dryRun: z.boolean().meta({ description: "True: everything was tried, and nothing kept." }),
    counts: z.array(importCount).meta({ description: "One entry for every kind that was sent." }),
  })
  .meta({ id: "ImportResult" });

export type ImportCount = z.output<typeof importCount>;
export type ImportResult = z.output<typeof importResult>;
