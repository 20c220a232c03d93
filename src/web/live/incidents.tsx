import { useState } from "preact/hooks";
import type { Incident } from "../../../shared/night.ts";
import { useLoad } from "../api/use-load.ts";
import { Field, fieldText } from "../nights/field.tsx";
import { useBoard } from "./board.ts";
import { listDistricts } from "./night-service.ts";

/** What went wrong tonight, latest first, and a form for a breaker that opened. */
export function Incidents() {
  const { night, mayRun } = useBoard();
  return (
    <section aria-labelledby="incidents-heading">
      <h2 id="incidents-heading">
        {night.incidents.length === 0 ? "Nothing has gone wrong yet" : "What went wrong"}
      </h2>
      {mayRun && <TripForm />}
      <ul class="incidents">
        {night.incidents.map((incident) => (
          <li key={incident.id}>
            <b>{incident.layout ?? "–"}</b> <span>{said(incident)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The note is said too, unless the sentence already ends with it. */
const said = ({ sentence, note }: Incident) =>
  note === "" || sentence.includes(note) ? sentence : `${sentence} ${note}`;

function TripForm() {
  const { club, act } = useBoard();
  const load = useLoad(club, (signal) => listDistricts(club, signal));
  const [district, setDistrict] = useState("");
  const [amps, setAmps] = useState("");
  const [note, setNote] = useState("");
  const districts = load.status === "ready" ? load.value : [];
  const submit = (event: Event) => {
    event.preventDefault();
    const measuredMa = amps === "" ? null : Math.round(Number(amps) * 1_000);
    act({
      path: "trips",
      body: { district, measuredMa, note },
      done: `The trip of ${district} is noted.`,
    });
    setDistrict("");
    setAmps("");
    setNote("");
  };
  return (
    <details class="fold">
      <summary>Note a trip</summary>
      <form class="live-form" onSubmit={submit}>
        <Field label="District">
          <select value={district} required onChange={(event) => setDistrict(fieldText(event))}>
            <option value="">Choose</option>
            {districts.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </Field>
        <Field label="Measured, A">
          <input
            type="number"
            min={0}
            max={100}
            step={0.01}
            inputMode="decimal"
            value={amps}
            onInput={(event) => setAmps(fieldText(event))}
          />
        </Field>
        <Field label="Note" class="grows">
          <input value={note} maxLength={500} onInput={(event) => setNote(fieldText(event))} />
        </Field>
        <button type="submit" class="big-button">
          Note it
        </button>
      </form>
    </details>
  );
}
