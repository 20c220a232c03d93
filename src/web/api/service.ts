import type { CheckReport } from "../../../shared/check.ts";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { change, read } from "./ask.ts";

/** One page of a list; `next` is the cursor of the page after it. */
export interface ListPage<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

/** Where everything of a club stands. */
export const clubPath = (club: string) => `/api/clubs/${encodeURIComponent(club)}`;
/** Where everything of a night stands. */
export const sessionPath = (club: string, session: string) =>
  `${clubPath(club)}/sessions/${encodeURIComponent(session)}`;

export function listClubs(signal: AbortSignal): Promise<ListPage<Club>> {
  return read("/api/clubs", signal);
}

export function readClub(club: string, signal: AbortSignal): Promise<Club> {
  return read(clubPath(club), signal);
}

/** `cursor` is the `next` of the page before; null for the first. */
export function listSessions(
  club: string,
  cursor: string | null,
  signal: AbortSignal,
): Promise<ListPage<Session>> {
  const query = cursor === null ? "" : `?cursor=${encodeURIComponent(cursor)}`;
  return read(`${clubPath(club)}/sessions${query}`, signal);
}

export function readSession(club: string, session: string, signal: AbortSignal): Promise<Session> {
  return read(sessionPath(club, session), signal);
}

export async function checkSlot(
  { club, session, slot }: { club: string; session: string; slot: string },
  signal: AbortSignal,
): Promise<CheckReport> {
  const path = `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/check`;
  return (await change<CheckReport>("POST", path, { signal })).value;
}
