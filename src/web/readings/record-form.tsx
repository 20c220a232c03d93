import { useState } from "preact/hooks";
import type { Reading } from "../../../shared/readings.ts";
import { change } from "../api/ask.ts";
import { Problem } from "../api/problem.ts";
import { clubPath } from "../api/service.ts";
import { Refused } from "../shell/refused.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { randomCode, today } from "../wiring/test-form.tsx";
import { readMeter } from "./read-meter.ts";

type Named = readonly (readonly [code: string, words: string])[];
type State = NonNullable<Reading["state"]>;

interface RecordFormProps {
  readonly club: string;
  readonly locomotives: Named;
  readonly districts: Named;
  /** The night and slot that districts are read in; null: there is none. */
  readonly night: { readonly session: string; readonly slot: string } | null;
  readonly onRecorded: () => void;
}

const STATES = {
  running: "Running",
  standing: "Standing",
  stalled: "Wheels held",
  inrush: "As power returns",
} as const satisfies Record<State, string>;

const notRead = (detail: string) =>
  new Problem(0, "Please correct what is marked.", "", [], { faults: [{ pointer: "/body/ma", detail }] });

/**
 * Writes down what a meter shows: of a locomotive on the bench, or of a district during a night. What was chosen stays for the
 * next figure.
 */
export function RecordForm({ club, locomotives, districts, night, onRecorded }: RecordFormProps) {
  const [of, setOf] = useState<"bench" | "night">("bench");
  const [locomotive, setLocomotive] = useState(locomotives[0]?.[0] ?? "");
  const [state, setState] = useState<State>("running");
  const [district, setDistrict] = useState(districts[0]?.[0] ?? "");
  const [layoutTime, setLayoutTime] = useState("");
  const [ma, setMa] = useState("");
  const [recorded, setRecorded] = useState("");
  const record = useSubmit(async () => {
    setRecorded("");
    const read = readMeter(ma);
    if ("fault" in read) throw notRead(read.fault);
    const takenOn = today();
    const seen = { code: `${of}-${takenOn}-${randomCode()}`, takenOn, origin: of, ma: read.ma };
    const body =
      of === "bench" ? { ...seen, locomotive, state } : { ...seen, district, layoutTime, ...night };
    await change("POST", `${clubPath(club)}/readings`, { body });
    setMa("");
    const nameOf = (named: Named, code: string) => named.find(([one]) => one === code)?.[1] ?? code;
    setRecorded(
      of === "bench"
        ? `${nameOf(locomotives, locomotive)}, ${STATES[state].toLowerCase()}: ${read.ma} mA is recorded.`
        : `${nameOf(districts, district)} at ${layoutTime}: ${read.ma} mA is recorded.`,
    );
    onRecorded();
  });
  return (
    <form class="test-form" onSubmit={record.submit} aria-label="Record a reading">
      {night && (
        <SelectField
          label="What was read"
          value={of}
          onValue={(value) => setOf(value as typeof of)}
          options={{ bench: "A locomotive on the bench", night: "A district during the night chosen above" }}
        />
      )}
      {of === "bench" ? (
        <>
          <SelectField label="Locomotive" value={locomotive} onValue={setLocomotive} options={locomotives} />
          <SelectField
            label="While it was"
            value={state}
            onValue={(value) => setState(value as State)}
            options={STATES}
          />
        </>
      ) : (
        <>
          <SelectField label="District" value={district} onValue={setDistrict} options={districts} />
          <TextField
            label="Layout clock showed"
            value={layoutTime}
            onValue={setLayoutTime}
            fault={record.faultAt("/body/layoutTime")}
          />
        </>
      )}
      <TextField label="Meter showed (mA)" value={ma} onValue={setMa} fault={record.faultAt("/body/ma")} />
      <button type="submit">Record the reading</button>
      <p role="status">{recorded}</p>
      <Refused problem={record.problem} besides={["/body/ma", "/body/layoutTime"]} />
    </form>
  );
}
