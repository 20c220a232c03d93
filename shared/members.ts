import { z } from "zod";
import { code, name, note } from "./units.ts";
import { ROLES, type Role } from "./vocabulary.ts";

/** What a person must be passed for before they may do it: `main line`, `branch`, `yard`. */
export const tag = z.string().trim().min(1).max(40);

/** Roles that are given; a member is everyone in the list. */
export const GIVEN_ROLES = ROLES.filter((role): role is Exclude<Role, "member"> => role !== "member");

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
    roles: z
      .array(z.enum(GIVEN_ROLES))
      .max(GIVEN_ROLES.length)
      .default([])
      .meta({ description: "What they may do beside reading and claiming." }),
    note,
  })
  .meta({ id: "Member" });

export type Member = z.output<typeof member>;
