import type { Club } from "../../../shared/clubs.ts";
import type { Database } from "../client.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import { toPolicy, toPolicyColumns } from "./policy.ts";
import type { ClubScope, KeptColumn, RecordTable } from "./record-table.ts";

/** The club with this code, undefined where there is none. */
export async function findClub(database: Database, code: string): Promise<ClubScope | undefined> {
  const club = await database.club.findUnique({
    where: { code },
    select: { id: true, code: true, timeZone: true },
  });
  return club ?? undefined;
}

export const clubTable: RecordTable<Club, rows.Club> = {
  model: "club",
  toColumns: (club): Omit<Prisma.ClubCreateManyInput, KeptColumn> => ({
    name: club.name,
    timeZone: club.timeZone,
    scale: club.scale,
    ...toPolicyColumns(club.policy),
    note: club.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    timeZone: row.timeZone,
    scale: row.scale,
    policy: toPolicy(row),
    note: row.note,
  }),
};
