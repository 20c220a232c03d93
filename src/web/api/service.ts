import type { CheckReport } from "../../../shared/check.ts";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { noAnswer, toProblem } from "./problem.ts";

/** One page of a list; `next` is the cursor of the page after it. */
export interface ListPage<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

/** Asks the service and gives its answer as `T`; throws a Problem, or the reason of an abort. */
async function ask<T>(method: "GET" | "POST", path: string, signal: AbortSignal): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, { method, signal, headers: { accept: "application/json" } });
  } catch (error) {
    throw signal.aborted ? error : noAnswer();
  }
  if (!response.ok) throw await toProblem(response);
  return (await response.json()) as T;
}

const clubPath = (club: string) => `/api/clubs/${encodeURIComponent(club)}`;
const sessionPath = (club: string, session: string) =>
  `${clubPath(club)}/sessions/${encodeURIComponent(session)}`;

export function listClubs(signal: AbortSignal): Promise<ListPage<Club>> {
  return ask("GET", "/api/clubs", signal);
}

export function readClub(club: string, signal: AbortSignal): Promise<Club> {
  return ask("GET", clubPath(club), signal);
}

/** `cursor` is the `next` of the page before; null for the first. */
export function listSessions(
  club: string,
  cursor: string | null,
  signal: AbortSignal,
): Promise<ListPage<Session>> {
  const query = cursor === null ? "" : `?cursor=${encodeURIComponent(cursor)}`;
  return ask("GET", `${clubPath(club)}/sessions${query}`, signal);
}

export function readSession(club: string, session: string, signal: AbortSignal): Promise<Session> {
  return ask("GET", sessionPath(club, session), signal);
}

export function checkSlot(
  { club, session, slot }: { club: string; session: string; slot: string },
  signal: AbortSignal,
): Promise<CheckReport> {
  return ask("POST", `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/check`, signal);
}
