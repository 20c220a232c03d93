import ical, { ICalEventStatus } from "ical-generator";

/** Something in a calendar. Instants are real time; half-open. */
export interface CalendarEvent {
  /** The same for as long as it is the same thing. */
  readonly uid: string;
  /** Counts its changes. */
  readonly sequence: number;
  readonly changedAt: Date;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly summary: string;
  readonly location: string;
  readonly description: string;
  readonly cancelled?: boolean;
}

const PRODUCT = { company: "Running Foreman", product: "Operating sessions", language: "EN" };
const REFRESH_SECONDS = 3_600;
const CRLF = "\r\n";

/**
 * An iCalendar object (RFC 5545; NAME and REFRESH-INTERVAL of RFC 7986), times in UTC so that no reader needs our time
 * zone data, DTEND exclusive as our ends are.
 */
export function writeCalendar(name: string, events: readonly CalendarEvent[]): string {
  const calendar = ical({ name, prodId: PRODUCT, ttl: REFRESH_SECONDS });
  for (const event of events)
    calendar.createEvent({
      id: `${event.uid}@running-foreman`,
      sequence: event.sequence,
      stamp: event.changedAt,
      lastModified: event.changedAt,
      start: event.startsAt,
      end: event.endsAt,
      summary: event.summary,
      ...(event.location !== "" && { location: event.location }),
      ...(event.description !== "" && { description: event.description }),
      ...(event.cancelled && { status: ICalEventStatus.CANCELLED }),
    });
  // every content line ends, the last one too (section 3.1)
  return calendar.toString().replace(/(\r\n)?$/, CRLF);
}
