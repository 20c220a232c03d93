import { useState } from "preact/hooks";
import type { ShortTest } from "../../../shared/short-tests.ts";
import { change } from "../api/ask.ts";
import { clubPath } from "../api/service.ts";
import { Refused } from "../shell/refused.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

interface TestFormProps {
  readonly club: string;
  readonly district: string;
  readonly name: string;
  readonly onRecorded: () => void;
}

const two = (n: number) => String(n).padStart(2, "0");

export const today = () => {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const timeOfDay = () => {
  const now = new Date();
  return [now.getHours(), now.getMinutes(), now.getSeconds()].map(two).join(":");
};

/** Places of a random number: two people who record at once do not meet. */
export const randomCode = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(3)), (byte) => byte.toString(16).padStart(2, "0")).join(
    "",
  );

/** Records what happened when somebody tested a district. */
export function TestForm({ club, district, name, onRecorded }: TestFormProps) {
  const [testedOn, setTestedOn] = useState(today);
  // until somebody says otherwise a test of today was made when it is recorded
  const [time, setTime] = useState<string | null>(null);
  const [result, setResult] = useState<ShortTest["result"]>("passed");
  const [by, setBy] = useState("");
  const record = useSubmit(async () => {
    const code = `${district}-${testedOn}-${randomCode()}`.slice(0, 40);
    const testedAt = (time ?? (testedOn === today() ? timeOfDay() : "")) || null;
    const test: ShortTest = { code, district, testedOn, testedAt, result, by, note: "" };
    await change("POST", `${clubPath(club)}/short-tests`, { body: test });
    onRecorded();
  });
  return (
    <form class="test-form" onSubmit={record.submit} aria-label={`Record a short test of ${name}`}>
      <TextField
        label="Tested on"
        type="date"
        value={testedOn}
        onValue={setTestedOn}
        fault={record.faultAt("/body/testedOn")}
      />
      <TextField
        label="At"
        type="time"
        value={time ?? (testedOn === today() ? timeOfDay().slice(0, 5) : "")}
        onValue={setTime}
        isOptional
        fault={record.faultAt("/body/testedAt")}
      />
      <SelectField
        label="Result"
        value={result}
        onValue={(value) => setResult(value as ShortTest["result"])}
        options={{ passed: "Passed: it opened everywhere", failed: "Failed" }}
      />
      <TextField label="Tested by" value={by} onValue={setBy} isOptional maxLength={120} />
      <button type="submit">Record the test of {name}</button>
      <Refused problem={record.problem} besides={["/body/testedOn", "/body/testedAt"]} />
    </form>
  );
}
