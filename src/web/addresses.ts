import { crewPath, eveningPath } from "../../shared/page-addresses.ts";

/** Addresses of the pages, with every code made fit for one. */
export const nightsAddress = (club: string) => `/clubs/${encodeURIComponent(club)}`;

export const planAddress = (club: string, session: string, slot: string) =>
  `${nightsAddress(club)}/nights/${encodeURIComponent(session)}/${encodeURIComponent(slot)}`;

/** What districts, supplies and outputs carry in a slot, and trying it otherwise. */
export const loadAddress = (club: string, session: string, slot: string) =>
  `${planAddress(club, session, slot)}/load`;

/** When to turn which selector of the analog panel in a slot. */
export const panelAddress = (club: string, session: string, slot: string) =>
  `${planAddress(club, session, slot)}/panel`;

const nightPath = (club: string, page: string, session: string) =>
  `${nightsAddress(club)}/${page}/${encodeURIComponent(session)}`;

/** The secretary's desk: the night as a whole. */
export const deskAddress = (club: string, session: string) => nightPath(club, "nights", session);

/** The board of who does what; a slot's, or the first one's. This is the link that members are sent. */
export const crewAddress = (club: string, session: string, slot?: string) =>
  `${crewPath(club, session)}${slot === undefined ? "" : `/${encodeURIComponent(slot)}`}`;

/** The board of the night under way. */
export const liveAddress = (club: string, session: string) => nightPath(club, "live", session);

/** A night to be made: as the one named, or as the last one there was. */
export const newNightAddress = (club: string, from?: string) =>
  `${nightsAddress(club)}/new-night${from === undefined ? "" : `?from=${encodeURIComponent(from)}`}`;

export const eveningAddress = eveningPath;

export const membersAddress = (club: string) => `${nightsAddress(club)}/members`;

export const memberAddress = (club: string, member: string) =>
  `${membersAddress(club)}/${encodeURIComponent(member)}`;

export const newMemberAddress = (club: string) => `${nightsAddress(club)}/new-member`;

/** The railway's records; a table of them, or the first. */
export const railwayAddress = (club: string, table?: string) =>
  `${nightsAddress(club)}/railway${table === undefined ? "" : `/${table}`}`;

export const rosterAddress = (club: string, table?: string) =>
  `${nightsAddress(club)}/roster${table === undefined ? "" : `/${table}`}`;

/** One locomotive or rake. */
export const stockAddress = (club: string, table: "locomotives" | "rakes", code: string) =>
  `${rosterAddress(club, table)}/${encodeURIComponent(code)}`;

/** Where a spreadsheet of locomotives is brought in. */
export const rosterImportAddress = (club: string) => `${nightsAddress(club)}/roster-import`;

export const handsetsAddress = (club: string) => `${nightsAddress(club)}/handsets`;

/** How the districts are wired, at a slot's peaks. */
export const wiringAddress = (club: string) => `${nightsAddress(club)}/wiring`;

/** What meters showed, and what follows from it. */
export const readingsAddress = (club: string) => `${nightsAddress(club)}/readings`;

/** Every reading, to be put right or taken out. */
export const everyReadingAddress = (club: string) => `${readingsAddress(club)}/every`;

/** What a timetable would take all-analog and all-digital. */
export const bothWaysAddress = (club: string) => `${nightsAddress(club)}/both-ways`;

export const trailAddress = (club: string) => `${nightsAddress(club)}/trail`;

export const mailsAddress = (club: string) => `${nightsAddress(club)}/mails`;

export const ACCOUNT = "/account";

export const FORGOT_PASSWORD = "/forgot-password";

const SIGN_IN = "/sign-in";

/** The way to sign in and come back to `from`, an address of a page with all it says. */
export const signInAddress = (from: string) =>
  from === "/" || isBeforeSignIn(from) ? SIGN_IN : `${SIGN_IN}?to=${encodeURIComponent(from)}`;

/** Pages for whoever is not signed in yet: they ask for nobody's records. */
export const isBeforeSignIn = (path: string) => /^\/(sign-in|forgot-password|links)(\/|\?|#|$)/.test(path);

/** Where `to` leads after a sign-in: one of our pages, never elsewhere, whatever a link that was sent says. */
export function backAddress(to: string | undefined): string {
  if (to === undefined || !/^\/(?![/\\])/.test(to)) return "/";
  return OUR_ADDRESSES.test(to) && !isBeforeSignIn(to) ? to : "/";
}

/** The addresses this client answers for; others, such as the API reference, are the service's own. */
export const OUR_ADDRESSES = /^\/(?:\?.*)?$|^\/(?:clubs|sign-in|forgot-password|links|account)(?:\/|\?|$)/;

export const API_REFERENCE = "/api/docs";
