import { useState } from "preact/hooks";
import type { DeskState, NightHandset } from "../../../shared/night.ts";
import { fieldText } from "../nights/field.tsx";
import { moveHandset, useBoard } from "./board.ts";
import { proposeHolder } from "./desk-proposal.ts";
import { span } from "./reading.ts";

const STATE_WORDS = {
  in: "On the desk",
  out: "Out",
  flat: "Flat",
  faulty: "Faulty",
  away: "Away",
} as const satisfies Record<NightHandset["state"], string>;

/** Handsets out and in: who holds which, how much charge is left, and the next hands it goes into. */
export function HandsetDesk() {
  const { night } = useBoard();
  const out = night.handsets.filter(({ state }) => state === "out").length;
  return (
    <section aria-labelledby="desk-heading">
      <h2 id="desk-heading">
        Handset desk: {out} of {night.handsets.length} out
      </h2>
      <ul class="handsets">
        {night.handsets.map((handset) => (
          <HandsetRow key={handset.code} handset={handset} />
        ))}
      </ul>
    </section>
  );
}

function HandsetRow({ handset }: { readonly handset: NightHandset }) {
  const { mayRun } = useBoard();
  return (
    <li class={`handset handset-${handset.state}`}>
      <p class="handset-what">
        <b>{handset.code}</b>{" "}
        <span class={`handset-state state-${handset.state}`}>{STATE_WORDS[handset.state]}</span>
        {handset.holder && <span>with {handset.holder.name}</span>}
        <Battery handset={handset} />
      </p>
      {mayRun && <Moves handset={handset} />}
    </li>
  );
}

/** Little enough to think of another one: common practice. */
const LOW_MIN = 30;

function Battery({ handset: { batteryLeftMinutes: left } }: { readonly handset: NightHandset }) {
  if (left === null) return null;
  return <span class={left < LOW_MIN ? "missing" : "quiet"}>{span(left)} of charge</span>;
}

function Moves({ handset }: { readonly handset: NightHandset }) {
  const { act } = useBoard();
  const { code, state } = handset;
  const button = (to: DeskState, word: string, done: string) => (
    <button
      key={to}
      type="button"
      class="big-button"
      aria-label={`${word}: handset ${code}`}
      onClick={() => act(moveHandset(handset, to, `Handset ${code}: ${done}`))}
    >
      {word}
    </button>
  );
  if (state === "in")
    return (
      <div class="handset-do">
        <HandOut handset={handset} />
        {button("flat", "Flat", "flat.")}
        {button("faulty", "Faulty", "faulty, on its record too.")}
      </div>
    );
  if (state === "out")
    return (
      <div class="handset-do">
        {button("in", "In", "back on the desk.")}
        {button("flat", "Flat", "flat, and back on the desk.")}
        {button("faulty", "Faulty", "faulty, on its record too.")}
      </div>
    );
  if (state === "flat")
    return <div class="handset-do">{button("in", "Charged", "charged, and on the desk.")}</div>;
  if (state === "faulty") return <div class="handset-do">{button("in", "Ready again", "ready again.")}</div>;
  return null;
}

/** To the driver who needs it next, or to anybody who is here. */
function HandOut({ handset }: { readonly handset: NightHandset }) {
  const { night, act } = useBoard();
  const proposed = proposeHolder(night, handset.code);
  const [chosen, setChosen] = useState<string | null>(null);
  const people = night.attendance.filter(({ here, member }) => here || member === proposed?.member);
  const member = chosen ?? proposed?.member ?? "";
  const name = people.find((person) => person.member === member)?.name ?? "";
  return (
    <span class="hand-out">
      <select
        class="hand-to"
        aria-label={`Who gets handset ${handset.code}`}
        value={member}
        onChange={(event) => setChosen(fieldText(event))}
      >
        <option value="">Choose who</option>
        {people.map((person) => (
          <option key={person.member} value={person.member}>
            {person.name}
            {person.member === proposed?.member && ` (train ${proposed.train.train})`}
          </option>
        ))}
      </select>
      <button
        type="button"
        class="big-button"
        aria-label={`Out: handset ${handset.code}`}
        disabled={name === ""}
        onClick={() => act(moveHandset(handset, "out", `Handset ${handset.code} is out to ${name}.`, member))}
      >
        Out
      </button>
    </span>
  );
}
