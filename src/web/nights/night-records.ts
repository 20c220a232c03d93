import type { BookingSummary } from "../../../shared/booking.ts";
import type { Session } from "../../../shared/sessions.ts";
import type { Timetable, TimetableVersion } from "../../../shared/timetable.ts";
import { change, read } from "../api/ask.ts";
import { clubPath, type ListPage } from "../api/service.ts";
import type { VersionChoice } from "./slot-fields.tsx";

/** Every record of a collection, page after page. */
export async function readAll<T>(path: string, signal: AbortSignal): Promise<readonly T[]> {
  const items: T[] = [];
  let cursor: string | null = null;
  do {
    const query: string = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
    const page: ListPage<T> = await read(`${path}?limit=100${query}`, signal);
    items.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return items;
}

export const listNights = (club: string, signal: AbortSignal) =>
  readAll<Session>(`${clubPath(club)}/sessions`, signal);

/** How far each night has come, and how it is manned. */
export const listBookings = (
  club: string,
  signal: AbortSignal,
): Promise<{ readonly items: readonly BookingSummary[] }> => read(`${clubPath(club)}/bookings`, signal);

export const listAreas = (club: string, signal: AbortSignal) =>
  readAll<{ readonly code: string }>(`${clubPath(club)}/areas`, signal);

/** Every timetable version that a night can run, the newest issued ones first. */
export async function listVersions(club: string, signal: AbortSignal): Promise<readonly VersionChoice[]> {
  const timetables = await readAll<Timetable>(`${clubPath(club)}/timetables`, signal);
  const choices = await Promise.all(
    timetables.map(async ({ code, name }) => {
      const path = `${clubPath(club)}/timetables/${encodeURIComponent(code)}/versions`;
      const versions = await readAll<TimetableVersion>(path, signal);
      return versions.map((version) => toChoice(code, name, version));
    }),
  );
  return choices.flat().sort((a, b) => Number(b.isIssued) - Number(a.isIssued) || b.version - a.version);
}

function toChoice(timetable: string, name: string, { number, state }: TimetableVersion) {
  const isIssued = state === "issued";
  return {
    timetable,
    version: number,
    isIssued,
    text: `${name}, version ${number}${isIssued ? "" : " (draft)"}`,
  };
}

export function makeNight(club: string, session: Session, key: string) {
  return change<Session>("POST", `${clubPath(club)}/sessions`, { body: session, key });
}
