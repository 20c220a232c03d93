import { z } from "zod";

/** What an answer says of a record beside its body. */
export const recordState = {
  version: z
    .int()
    .min(1)
    .meta({ description: "Counts the record's changes; its ETag is this number in quotes." }),
  updatedAt: z.iso.datetime().meta({ description: "When it last changed, UTC." }),
};

export interface RecordState {
  readonly version: number;
  readonly updatedAt: string;
}
