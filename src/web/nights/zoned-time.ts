/** Ms by which a zone's clocks are ahead of UTC at an instant. */
function aheadMs(ms: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  }).formatToParts(ms);
  const of = (type: string) => Number(parts.find((part) => part.type === type)?.value);
  const wall = Date.UTC(of("year"), of("month") - 1, of("day"), of("hour"), of("minute"), of("second"));
  return wall - Math.floor(ms / 1_000) * 1_000;
}

/**
 * The instant at which a zone's clocks show `2027-03-20T19:00`, as a browser's field gives it. Of an hour that comes
 * twice it is the first; an hour that is skipped counts on from the one before.
 */
export function toInstant(wall: string, timeZone: string): string {
  const asUtc = Date.parse(`${wall}Z`);
  const dayBefore = aheadMs(asUtc - 86_400_000, timeZone);
  const first = asUtc - dayBefore;
  const isSo = aheadMs(first, timeZone) === dayBefore;
  const ms = isSo ? first : asUtc - aheadMs(asUtc + 86_400_000, timeZone);
  const isSkipped = aheadMs(ms, timeZone) !== asUtc - ms;
  return new Date(isSkipped ? first : ms).toISOString();
}

/** What a zone's clocks show at an instant, `2027-03-20T19:00`: what a browser's field takes. */
export function toWall(instant: string, timeZone: string): string {
  const ms = Date.parse(instant);
  return new Date(ms + aheadMs(ms, timeZone)).toISOString().slice(0, 16);
}
