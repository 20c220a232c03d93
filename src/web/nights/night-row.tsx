import type { BookingSummary } from "../../../shared/booking.ts";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import {
  crewAddress,
  deskAddress,
  eveningAddress,
  liveAddress,
  newNightAddress,
  planAddress,
} from "../addresses.ts";
import { useMay } from "../api/use-me.ts";
import { BookingState } from "./booking-state.tsx";
import { slotDates } from "./night-dates.ts";
import { SlotVerdict } from "./slot-verdict.tsx";

interface NightRowProps {
  readonly club: Club;
  readonly session: Session;
  /** How far the night has come; undefined until that is known. */
  readonly booking: BookingSummary | undefined;
}

/** How the areas are run, said once where all are run alike. */
function areasText({ areas }: Session): string {
  const controls = new Set(areas.map(({ control }) => control));
  if (controls.size === 1) return `all ${areas[0]?.control}`;
  return areas.map(({ area, control }) => `${area} ${control}`).join(", ");
}

/** State, manning and what one has oneself. */
function Booked({ booking: { state, manning, mine } }: { readonly booking: BookingSummary }) {
  const { trains, manned, duties, mannedDuties } = manning;
  return (
    <p class="night-booked">
      <BookingState state={state} />
      {state !== "draft" && state !== "cancelled" && (
        <span>
          {manned === trains ? "every train has a driver" : `${trains - manned} of ${trains} trains unmanned`}
          {duties > mannedDuties && `, ${duties - mannedDuties} of ${duties} duties too`}
        </span>
      )}
      {mine > 0 && <strong>you have {mine}</strong>}
    </p>
  );
}

/** One night with its slots, each with its verdict. */
export function NightRow({ club, session, booking }: NightRowProps) {
  const first = session.slots[0];
  const dates = first ? slotDates(first, club.timeZone) : null;
  return (
    <li class="night">
      <p class="night-date">
        <span class="weekday">{dates?.weekday}</span> {dates?.date}
      </p>
      <div>
        <h2>
          <a href={crewAddress(club.code, session.code)}>{session.name}</a>
        </h2>
        {booking && <Booked booking={booking} />}
        <p class="night-facts">
          Layout clock {session.clockRatio} times as fast; {areasText(session)}
        </p>
        <ul class="slots">
          {session.slots.map((slot) => (
            <li key={slot.code} class="slot">
              <a href={planAddress(club.code, session.code, slot.code)}>{slot.name}</a>
              <span class="slot-hours">
                {slotDates(slot, club.timeZone).hours} · layout from {slot.layoutStart}
              </span>
              <SlotVerdict club={club.code} session={session.code} slot={slot.code} />
            </li>
          ))}
        </ul>
        <NightLinks club={club.code} session={session.code} />
      </div>
    </li>
  );
}

/** The way to the night's pages, each to those it is for. */
function NightLinks({ club, session }: { readonly club: string; readonly session: string }) {
  const mayBook = useMay(club, "book");
  const isMember = useMay(club, "claim");
  return (
    <p class="night-links">
      {isMember && <a href={eveningAddress(club, session)}>My evening</a>}
      <a href={crewAddress(club, session)}>Crew</a>
      <a href={liveAddress(club, session)}>Live</a>
      <a href={deskAddress(club, session)}>Desk</a>
      {mayBook && <a href={newNightAddress(club, session)}>Copy</a>}
    </p>
  );
}
