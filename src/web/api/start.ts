import type { Club } from "../../../shared/clubs.ts";
import type { DocumentPart, ImportResult } from "../../../shared/transfer.ts";
import { change, read } from "./ask.ts";
import { clubPath, type ListPage } from "./service.ts";

/** What a club is begun with; all else has its defaults. */
export type NewClub = Pick<Club, "code" | "name" | "timeZone" | "scale">;

/** Makes a club; whoever makes it is its secretary. */
export async function makeClub(body: NewClub): Promise<Club> {
  return (await change<Club>("POST", "/api/clubs", { body })).value;
}

/** Reads a document into a club, all of it or nothing; `isTrial`: tries everything and keeps nothing. */
export async function importDocument(club: string, body: unknown, isTrial: boolean): Promise<ImportResult> {
  const path = `${clubPath(club)}/import?dryRun=${isTrial}`;
  return (await change<ImportResult>("POST", path, { body })).value;
}

/** What another club's railway is copied with: everything but its people and its nights. */
const COPIED = ["layout", "roster", "handsets", "timetables"] as const satisfies readonly DocumentPart[];

export const exportRailway = (club: string) =>
  read<unknown>(`${clubPath(club)}/export?parts=${COPIED.join(",")}`, new AbortController().signal);

/** How far a club has come on its way to the first night. */
export interface Beginnings {
  readonly hasRailway: boolean;
  readonly hasTimetable: boolean;
}

export async function readBeginnings(club: string, signal: AbortSignal): Promise<Beginnings> {
  const hasAny = async (kind: string) =>
    (await read<ListPage<unknown>>(`${clubPath(club)}/${kind}?limit=1`, signal)).items.length > 0;
  const [hasSections, hasLocomotives, hasTimetable] = await Promise.all(
    ["sections", "locomotives", "timetables"].map(hasAny),
  );
  return {
    hasRailway: (hasSections && hasLocomotives) === true,
    hasTimetable: hasTimetable === true,
  };
}
