import type { ClubEvent } from "../../../shared/trail.ts";
import type { Database } from "../../database/client.ts";

/** Changes of a club after a number, in the order in which they were committed. */
export async function readEvents(
  database: Database,
  clubId: string,
  after: number,
  limit: number,
): Promise<ClubEvent[]> {
  const rows = await database.trailEntry.findMany({
    where: { clubId, seq: { gt: after } },
    orderBy: { seq: "asc" },
    take: limit,
    select: { seq: true, kind: true, code: true, deed: true, sessionCode: true },
  });
  return rows.map(({ seq, kind, code, deed, sessionCode }) => ({
    seq: Number(seq),
    kind: kind as ClubEvent["kind"],
    code,
    deed: deed as ClubEvent["deed"],
    ...(sessionCode !== null && { session: sessionCode }),
  }));
}

/** Number of the club's latest change, 0 where there is none. */
export async function readPosition(database: Database, clubId: string): Promise<number> {
  const last = await database.trailEntry.findFirst({
    where: { clubId },
    orderBy: { seq: "desc" },
    select: { seq: true },
  });
  return Number(last?.seq ?? 0);
}
