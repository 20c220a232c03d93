import {
  BOOKING_MOVES,
  type Booking,
  type BookingState,
  type BookingSummary,
  type Manning,
  type SlotBlock,
} from "../../../shared/booking.ts";
import type { Permission } from "../../../shared/permissions.ts";
import type { BookedNight, BookingNow, SlotManning } from "../../database/bookings.ts";
import type { NightOfList } from "./store.ts";

/** What the marshal may do on the night; all else takes the secretary. */
const ON_THE_NIGHT = new Set<BookingState>(["locked", "running", "finished"]);

/** Whether one with these permissions may make such a move; not whether the night lets it. */
export const mayMove = (
  permissions: ReadonlySet<Permission>,
  from: BookingState,
  to: BookingState,
): boolean =>
  permissions.has("book") ||
  (permissions.has("run-night") && from !== "open" && ON_THE_NIGHT.has(from) && ON_THE_NIGHT.has(to));

export const canMove = (from: BookingState, to: BookingState): boolean =>
  (BOOKING_MOVES[from] as readonly BookingState[]).includes(to);

const addUp = (slots: readonly SlotManning[]): Manning => ({
  trains: slots.reduce((sum, { trains }) => sum + trains, 0),
  manned: slots.reduce((sum, { manned }) => sum + manned, 0),
  duties: slots.reduce((sum, { duties }) => sum + duties, 0),
  mannedDuties: slots.reduce((sum, { mannedDuties }) => sum + mannedDuties, 0),
});

/** The first start and the last end of a night's slots, which come in order of start. */
const hoursOf = (slots: readonly SlotManning[]) => ({
  startsAt: (slots[0]?.startsAt ?? new Date(0)).toISOString(),
  endsAt: new Date(Math.max(0, ...slots.map(({ endsAt }) => endsAt.getTime()))).toISOString(),
});

export function toBookingAnswer(
  night: BookedNight,
  booking: BookingNow,
  slots: readonly SlotManning[],
  more: {
    readonly attending: readonly string[];
    readonly blocks: SlotBlock[] | null;
    readonly permissions: ReadonlySet<Permission>;
  },
): Booking {
  return {
    session: night.code,
    name: night.name,
    ...hoursOf(slots),
    state: booking.state,
    mayMoveTo: BOOKING_MOVES[booking.state].filter((to) => mayMove(more.permissions, booking.state, to)),
    reason: booking.reason,
    venueNote: booking.venueNote,
    noteToAll: booking.noteToAll,
    secondClaimFrom: booking.secondClaimFrom?.toISOString() ?? null,
    attending: [...more.attending],
    manning: addUp(slots),
    slots: slots.map((slot) => ({
      slot: slot.slot,
      name: slot.name,
      startsAt: slot.startsAt.toISOString(),
      endsAt: slot.endsAt.toISOString(),
      manning: addUp([slot]),
    })),
    blocks: more.blocks,
    version: booking.version,
  };
}

export function toSummary(night: NightOfList, slots: readonly SlotManning[]): BookingSummary {
  return {
    session: night.code,
    name: night.name,
    state: night.state,
    ...hoursOf(slots),
    manning: addUp(slots),
    mine: slots.reduce((sum, { mine }) => sum + mine, 0),
  };
}
