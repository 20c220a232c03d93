import type { Club } from "../../../shared/clubs.ts";
import { API_REFERENCE, nightsAddress } from "../addresses.ts";
import { listClubs } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";

/** A new club's first page: the three steps to its first checked night. */
export function NoNights({ club }: { readonly club: Club }) {
  const path = `/api/clubs/${encodeURIComponent(club.code)}`;
  return (
    <div class="empty">
      <p>{club.name} has no night recorded yet. Three steps lead to the first checked one:</p>
      <ol>
        <li>
          <strong>The railway and its stock.</strong> Write down sections, links, feeds and the locomotives'
          currents, and read them in as one document at <code>{path}/import</code>.
        </li>
        <li>
          <strong>A timetable.</strong> Each train with its path over the sections and its times by the layout
          clock.
        </li>
        <li>
          <strong>A night.</strong> Date, hours, clock ratio, timetable, and which areas run analog and which
          digital. It appears here with its verdict.
        </li>
      </ol>
      <p>
        <a href={API_REFERENCE}>The API reference</a> has an example of each.
      </p>
      <OtherClubs than={club.code} />
    </div>
  );
}

/** Where it leads can be seen at another club, such as the demo's; nothing where there is none. */
function OtherClubs({ than }: { readonly than: string }) {
  const load = useLoad("clubs", listClubs);
  const others = load.status === "ready" ? load.value.items.filter(({ code }) => code !== than) : [];
  if (others.length === 0) return null;
  return (
    <p>
      To see where it leads, look at{" "}
      {others.map(({ code, name }, i) => (
        <span key={code}>
          {i > 0 && ", "}
          <a href={nightsAddress(code)}>{name}</a>
        </span>
      ))}
      .
    </p>
  );
}
