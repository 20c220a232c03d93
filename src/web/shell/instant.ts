const DAY_AND_TIME: Intl.DateTimeFormatOptions = {
  weekday: "short",
  day: "numeric",
  month: "short",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
  hourCycle: "h23",
};

/**
 * An instant as people write it, `Fri 27 Nov 2026, 19:35`, by the clock of `timeZone` (IANA); left out, by the clock
 * of the device that shows it.
 */
export function dayAndTime(instant: string, timeZone?: string): string {
  return new Intl.DateTimeFormat("en-GB", { ...DAY_AND_TIME, ...(timeZone && { timeZone }) })
    .format(new Date(instant))
    .replace(/^(\w+), /, "$1 ");
}
