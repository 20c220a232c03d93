/** `19:42`, the room's clock in the club's zone. */
export function roomTime(at: string, timeZone: string): string {
  return new Intl.DateTimeFormat("en-GB", {
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
    timeZone,
  }).format(Date.parse(at));
}

/** A walk as one thinks of it: whole minutes, rounded up, so that one is not late. */
export function walkText(seconds: number): string {
  return seconds === 0 ? "no walk" : `${Math.ceil(seconds / 60)} min walk`;
}
