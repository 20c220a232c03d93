import type { Member } from "../../../shared/members.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const memberTable: RecordTable<Member, rows.Member> = {
  model: "member",
  toColumns: (member): Omit<Prisma.MemberCreateManyInput, KeptColumn> => ({
    name: member.name,
    passedFor: member.passedFor,
    junior: member.junior,
    roles: member.roles,
    note: member.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    passedFor: row.passedFor,
    junior: row.junior,
    roles: row.roles as Member["roles"],
    note: row.note,
  }),
};
