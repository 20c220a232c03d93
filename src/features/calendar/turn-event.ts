import type { Turn } from "../../database/turns.ts";
import type { CalendarEvent } from "./write-calendar.ts";

/** Somebody's train or duty as an event, from the pick-up of the handset to its hand-in. */
export const turnEvent = (turn: Turn): CalendarEvent => ({
  uid: `claim-${turn.claim}`,
  sequence: turn.changes,
  changedAt: turn.changedAt,
  startsAt: turn.fromAt,
  endsAt: turn.untilAt,
  summary: turn.what,
  location: turn.where,
  description: [
    `${turn.club}: ${turn.night}`,
    turn.locomotives && `Locomotive: ${turn.locomotives}`,
    turn.handset && `Handset: ${turn.handset}`,
    turn.venueNote,
  ]
    .filter(Boolean)
    .join("\n"),
});
