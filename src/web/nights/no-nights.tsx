import type { Club } from "../../../shared/clubs.ts";
import { API_REFERENCE } from "../addresses.ts";

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
        <a href={API_REFERENCE}>The API reference</a> has an example of each. To see where it leads,{" "}
        <a href="/">look at another club</a>: the demo club has two nights ready.
      </p>
    </div>
  );
}
