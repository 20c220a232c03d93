import { z } from "zod";
import { LIMITS } from "../../../shared/limits.ts";
import { type Member, member, tag } from "../../../shared/members.ts";
import { memberTable } from "../../database/records/members.ts";
import type { RecordKind } from "../../records/record-kind.ts";

export const memberKind: RecordKind<Member> = {
  one: "member",
  many: "members",
  about: "A member, what they are passed for, and whether they need a supervising adult.",
  schema: member,
  example: { code: "ada", name: "Ada Fenwright", passedFor: ["main line", "yard"] },
  table: memberTable,
  keep: "keep-members",
  most: LIMITS.members,
  filters: {
    passedFor: {
      schema: tag
        .regex(/^[^\0\p{Surrogate}]*$/u, "Must be text without NUL characters.")
        .meta({ description: "Only those passed for this." }),
      where: (passed: string) => ({ passedFor: { has: passed } }),
    },
    junior: {
      schema: z.stringbool({ truthy: ["true"], falsy: ["false"] }).meta({
        description: "`true`: only juniors; `false`: only those who are not.",
      }),
      where: (junior: boolean) => ({ junior }),
    },
  },
};
