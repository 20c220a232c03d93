import type { Attendance } from "../../../shared/night.ts";
import { useBoard } from "./board.ts";

/** Who is here and who is still expected; a press books on, another off again. */
export function BookingOn() {
  const { night } = useBoard();
  const here = night.attendance.filter((person) => person.here);
  const missing = night.attendance.filter((person) => !person.here);
  return (
    <section aria-labelledby="booking-heading">
      <h2 id="booking-heading">
        Booked on: {here.length}
        {missing.length > 0 && `; still expected: ${missing.length}`}
      </h2>
      <ul class="people">
        {[...missing, ...here].map((person) => (
          <Person key={person.member} person={person} />
        ))}
      </ul>
    </section>
  );
}

function Person({ person }: { readonly person: Attendance }) {
  const { act, mayRun } = useBoard();
  const { member, name, here, junior } = person;
  const move = (to: boolean) => ({
    path: "attendance",
    body: { member, here: to },
    done: to ? `${name} is booked on.` : `${name} is booked off.`,
  });
  const words = (
    <>
      <span class="attendee-name">
        {name}
        {junior && <span class="quiet"> junior</span>}
      </span>
      <span class="attendee-state">{here ? "Here" : "Not yet here"}</span>
    </>
  );
  if (!mayRun) return <li class={`attendee ${here ? "attendee-here" : ""}`}>{words}</li>;
  return (
    <li>
      <button
        type="button"
        class={`attendee ${here ? "attendee-here" : ""}`}
        aria-pressed={here}
        onClick={() => act({ ...move(!here), undo: move(here) })}
      >
        {words}
      </button>
    </li>
  );
}
