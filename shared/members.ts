import { z } from "zod";
import { code, name, note } from "./units.ts";

/** What a person must be passed for before they may do it: `main line`, `branch`, `yard`. */
export const tag = z.string().trim().min(1).max(40);

export const member = z
  .strictObject({
    code,
    name,
    passedFor: z
      .array(tag)
      .max(50)
      .default([])
      .meta({ description: "What they may drive or do, in the club's own words." }),
    junior: z.boolean().default(false).meta({ description: "Needs a supervising adult in the same slot." }),
    note,
  })
  .meta({ id: "Member" });

export type Member = z.output<typeof member>;
