import type { TrailKind } from "../../../shared/trail.ts";
import type { Database } from "../../database/client.ts";
import type { Prisma } from "../../database/generated/client.ts";

/** Which entries to read; what is undefined asks for nothing. */
export interface TrailFilter {
  readonly kind: TrailKind | undefined;
  readonly code: string | undefined;
  readonly person: string | undefined;
  readonly session: string | undefined;
  /** From this instant on, and before that one. */
  readonly from: Date | undefined;
  readonly to: Date | undefined;
}

/** The newest `limit` entries with a number below `before`, the newest first. */
export const readTrail = (
  database: Database,
  clubId: string,
  { kind, code, person, session, from, to }: TrailFilter,
  { before, limit }: { readonly before: number | undefined; readonly limit: number },
) =>
  database.trailEntry.findMany({
    where: {
      clubId,
      ...(kind !== undefined && { kind }),
      ...(code !== undefined && { code }),
      ...(person !== undefined && { personId: person }),
      ...(session !== undefined && { sessionCode: session }),
      ...(before !== undefined && { seq: { lt: before } }),
      at: { ...(from && { gte: from }), ...(to && { lt: to }) } satisfies Prisma.DateTimeFilter,
    },
    orderBy: { seq: "desc" },
    take: limit,
  });

export interface Doer {
  /** Null once the account was erased. */
  readonly name: string | null;
  /** Code in the club; null where they are no member any more. */
  readonly member: string | null;
}

/** Who the people are, by their ids. */
export async function readDoers(
  database: Database,
  clubId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Doer>> {
  const people = await database.person.findMany({
    where: { id: { in: [...ids] } },
    select: {
      id: true,
      name: true,
      erasedAt: true,
      memberships: { where: { clubId }, select: { memberCode: true } },
    },
  });
  return new Map(
    people.map(({ id, name, erasedAt, memberships }) => [
      id,
      { name: erasedAt ? null : name, member: memberships[0]?.memberCode ?? null },
    ]),
  );
}
