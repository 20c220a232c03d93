import { DateTime, IANAZone } from "luxon";

/** A date (`2027-03-27`) and a time (`19:30`, seconds optional) as the club's wall clock shows them. */
export interface LocalTime {
  readonly date: string;
  readonly time: string;
}

/** Which of the two, for a time that the clocks show twice when they go back. */
export type Occurrence = "earlier" | "later";

/** The instant a local time stands for, or why it stands for none or for two. */
export type Resolution =
  | { readonly kind: "instant"; readonly instant: Date }
  /** The clocks go forward over it: they show `from`, and then at once `to`. */
  | { readonly kind: "skipped"; readonly from: string; readonly to: string }
  | { readonly kind: "repeated"; readonly earlier: Date; readonly later: Date }
  /** Not a date and time of the calendar, such as 30 February. */
  | { readonly kind: "invalid" };

const DAY_MS = 86_400_000;
const WALL_CLOCK = "HH:mm";

/** Whether `zone` is a name of the IANA time zone database, such as Europe/London. */
export const isTimeZone = (zone: string): boolean => IANAZone.isValidZone(zone);

/**
 * The instant of a local time in an IANA zone. A time shown twice needs `occurrence`; on any other it has no effect.
 * The zone must be one that `isTimeZone` accepts.
 */
export function resolveLocalTime(local: LocalTime, zone: string, occurrence?: Occurrence): Resolution {
  const format = local.time.length > "HH:mm".length ? "yyyy-MM-dd HH:mm:ss" : "yyyy-MM-dd HH:mm";
  const wanted = DateTime.fromFormat(`${local.date} ${local.time}`, format, { zone: "utc" });
  if (!wanted.isValid) return { kind: "invalid" };
  const found = wanted.setZone(zone, { keepLocalTime: true });
  if (found.toFormat(format) !== wanted.toFormat(format)) return { kind: "skipped", ...gapAround(found) };
  const [earlier, later] = found
    .getPossibleOffsets()
    .map((candidate) => candidate.toJSDate())
    .sort((a, b) => a.getTime() - b.getTime());
  if (earlier === undefined || later === undefined) return { kind: "instant", instant: found.toJSDate() };
  if (occurrence === undefined) return { kind: "repeated", earlier, later };
  return { kind: "instant", instant: occurrence === "earlier" ? earlier : later };
}

/** Real milliseconds from one instant to another, whatever the clocks on the wall did between. */
export const elapsedMs = (from: Date, to: Date): number => to.getTime() - from.getTime();

/** An instant as the wall clock of `zone` shows it, with its offset: `2027-03-28T02:30:00+01:00`. */
export function toLocalText(instant: Date, zone: string): string {
  const text = DateTime.fromJSDate(instant, { zone }).toISO({ suppressMilliseconds: true });
  if (text === null) throw new Error(`no local text for ${instant} in ${zone}`);
  return text;
}

/** What the clocks show on both sides of the jump within a day of `near`: the jump is found by halving. */
function gapAround(near: DateTime): { from: string; to: string } {
  let before = near.toMillis() - DAY_MS;
  let after = near.toMillis() + DAY_MS;
  const offset = (ms: number) => near.zone.offset(ms);
  const winter = offset(before);
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (offset(middle) === winter) before = middle;
    else after = middle;
  }
  const shown = (minutes: number) =>
    DateTime.fromMillis(after + minutes * 60_000, { zone: "utc" }).toFormat(WALL_CLOCK);
  return { from: shown(winter), to: shown(offset(after)) };
}

/** What the wall clock of `zone` shows at an instant: `19:30`. */
export const wallClock = (instant: Date, zone: string): string =>
  DateTime.fromJSDate(instant, { zone }).toFormat(WALL_CLOCK);

/** The day and time of an instant for a letter: `Saturday 20 March 2027, 19:30`. */
export const dayAndTime = (instant: Date, zone: string): string =>
  DateTime.fromJSDate(instant, { zone }).setLocale("en-GB").toFormat(`cccc d LLLL yyyy, ${WALL_CLOCK}`);
