import { wallClock } from "../../lib/local-time.ts";
import type { CalendarNight } from "./store.ts";
import type { CalendarEvent } from "./write-calendar.ts";

/** The whole night as one event: its slots and notes are its description. */
export function nightEvent(night: CalendarNight, zone: string): CalendarEvent {
  const slots = night.slots.map(({ name, startsAt }) => `${wallClock(new Date(startsAt), zone)} ${name}`);
  return {
    uid: `night-${night.id}`,
    sequence: night.changes,
    changedAt: night.changedAt,
    startsAt: night.startsAt,
    endsAt: night.endsAt,
    summary: `${night.club}: ${night.name}`,
    location: night.venueNote,
    description: [...slots, night.noteToAll].filter(Boolean).join("\n"),
    cancelled: night.state === "cancelled",
  };
}
