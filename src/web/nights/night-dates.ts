import type { Session } from "../../../shared/sessions.ts";

/** Date and hours of a slot as the club room's wall shows them. */
export interface SlotDates {
  readonly weekday: string;
  /** `27 March 2027`. */
  readonly date: string;
  /** `19:00–22:00`. */
  readonly hours: string;
}

export function slotDates(slot: Session["slots"][number], timeZone: string): SlotDates {
  const zoned = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat("en-GB", { ...options, timeZone });
  const date = zoned({ day: "numeric", month: "long", year: "numeric" });
  const hours = zoned({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  const [start, end] = [new Date(slot.startsAt), new Date(slot.endsAt)];
  return {
    weekday: zoned({ weekday: "long" }).format(start),
    date: date.format(start),
    hours: `${hours.format(start)}–${hours.format(end)}`,
  };
}
