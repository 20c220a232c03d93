import type { Session, Slot } from "../../../shared/sessions.ts";

/** A slot as the form holds it; hours are the club room's. */
export interface SlotDraft {
  readonly code: string;
  readonly name: string;
  /** Days after the night's date on which it starts: 1 for a slot after midnight. */
  readonly day: number;
  /** `19:00`. */
  readonly start: string;
  /** `22:00`; not after `start` means the next day. */
  readonly end: string;
  readonly layoutStart: string;
  readonly timetable: string;
  readonly timetableVersion: number;
}

/** A night as the form holds it until it is made. */
export interface NightDraft {
  /** Of its first slot, `2027-03-27`. */
  readonly date: string;
  /** Null until somebody types one: then it follows the date. */
  readonly name: string | null;
  readonly clockRatio: number;
  readonly areas: Session["areas"];
  readonly policy: Session["policy"];
  readonly slots: readonly SlotDraft[];
  readonly note: string;
}

const DAY_MS = 86_400_000;

/** Days between two dates; dates are counted in UTC so that no change of clocks comes between. */
const daysBetween = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

export function addDays(date: string, days: number): string {
  return new Date(Date.parse(date) + days * DAY_MS).toISOString().slice(0, 10);
}

/** `Saturday 27 March 2027`. */
export function dateInWords(date: string): string {
  const format = new Intl.DateTimeFormat("en-GB", {
    weekday: "long",
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  });
  // some browsers set a comma after the weekday
  return format.format(Date.parse(date)).replace(",", "");
}

/** Wall date and hour of an answer's `2027-03-27T19:00+00:00`: the service writes times in the club's zone. */
const wallDate = (time: string) => time.slice(0, 10);
const wallHour = (time: string) => time.slice(11, 16);

/** Dates in the club room on which some night has a slot. */
export const datesOf = (sessions: readonly Session[]): ReadonlySet<string> =>
  new Set(sessions.flatMap(({ slots }) => slots.map(({ startsAt }) => wallDate(startsAt))));

/** The same night on the same weekday, a week or as many weeks later as `today` asks, on a date that is free. */
export function copyNight(
  session: Session,
  today: string,
  taken: ReadonlySet<string> = new Set(),
): NightDraft {
  const first = session.slots.map(({ startsAt }) => wallDate(startsAt)).sort()[0] ?? today;
  let weeks = Math.max(1, Math.ceil(daysBetween(first, today) / 7));
  while (taken.has(addDays(first, weeks * 7))) weeks++;
  return {
    date: addDays(first, weeks * 7),
    name: null,
    clockRatio: session.clockRatio,
    areas: session.areas,
    policy: session.policy,
    slots: session.slots.map((slot) => copySlot(slot, first)),
    note: session.note,
  };
}

function copySlot({ startsAt, endsAt, ...slot }: Slot, first: string): SlotDraft {
  return {
    ...slot,
    day: daysBetween(first, wallDate(startsAt)),
    start: wallHour(startsAt),
    end: wallHour(endsAt),
  };
}

/** A night where there is none to copy: the coming Friday evening, a clock four times as fast, all of it digital. */
export function firstNight(
  today: string,
  areas: readonly string[],
  timetable: { readonly code: string; readonly version: number } | null,
): NightDraft {
  const friday = (5 - new Date(Date.parse(today)).getUTCDay() + 7) % 7 || 7;
  return {
    date: addDays(today, friday),
    name: null,
    clockRatio: 4,
    areas: areas.map((area) => ({ area, control: "digital" as const })),
    policy: null,
    slots: [
      {
        code: "evening",
        name: "Evening",
        day: 0,
        start: "19:00",
        end: "22:00",
        layoutStart: "8:00",
        timetable: timetable?.code ?? "",
        timetableVersion: timetable?.version ?? 1,
      },
    ],
    note: "",
  };
}

/** What is sent; the code is the date, with a number where that night is already there. */
export function toSession(draft: NightDraft, taken: ReadonlySet<string>): Session {
  let code = draft.date;
  for (let n = 2; taken.has(code); n++) code = `${draft.date}-${n}`;
  return {
    code,
    name: draft.name ?? dateInWords(draft.date),
    clockRatio: draft.clockRatio,
    areas: draft.areas,
    policy: draft.policy,
    slots: draft.slots.map((slot) => toSlot(slot, draft.date)),
    note: draft.note,
  };
}

function toSlot({ day, start, end, ...slot }: SlotDraft, date: string): Slot {
  const startDate = addDays(date, day);
  const endDate = end > start ? startDate : addDays(startDate, 1);
  return { ...slot, startsAt: `${startDate}T${start}`, endsAt: `${endDate}T${end}` };
}

/** The date in the club room at an instant, `2027-03-27`. */
export function dateThere(instant: Date, timeZone: string): string {
  // Swedish writes dates as ISO 8601 does
  return new Intl.DateTimeFormat("sv-SE", { dateStyle: "short", timeZone }).format(instant);
}
