import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { planAddress } from "../addresses.ts";
import { slotDates } from "./night-dates.ts";
import { SlotVerdict } from "./slot-verdict.tsx";

interface NightRowProps {
  readonly club: Club;
  readonly session: Session;
}

/** How the areas are run, said once where all are run alike. */
function areasText({ areas }: Session): string {
  const controls = new Set(areas.map(({ control }) => control));
  if (controls.size === 1) return `all ${areas[0]?.control}`;
  return areas.map(({ area, control }) => `${area} ${control}`).join(", ");
}

/** One night with its slots, each with its verdict. */
export function NightRow({ club, session }: NightRowProps) {
  const first = session.slots[0];
  const dates = first ? slotDates(first, club.timeZone) : null;
  return (
    <li class="night">
      <p class="night-date">
        <span class="weekday">{dates?.weekday}</span> {dates?.date}
      </p>
      <div>
        <h2>{session.name}</h2>
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
      </div>
    </li>
  );
}
