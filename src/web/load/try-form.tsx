import { useState } from "preact/hooks";
import type { TryStep } from "../../../shared/what-if.ts";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import type { Start } from "./load-service.ts";

const WHATS = {
  move: "runs earlier or later",
  "change-locomotive": "has another locomotive",
  "leave-rake": "runs without a rake",
  "leave-train": "does not run",
} as const satisfies Record<TryStep["do"], string>;

interface TryFormProps {
  readonly start: Pick<Start, "trains" | "locomotives">;
  readonly onTry: (step: TryStep) => void;
}

/** One thing to try on one train. */
export function TryForm({ start: { trains, locomotives }, onTry }: TryFormProps) {
  const [code, setCode] = useState(trains[0]?.code ?? "");
  const [what, setWhat] = useState<TryStep["do"]>("move");
  const [minutes, setMinutes] = useState("5");
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const [rake, setRake] = useState("");
  const train = trains.find((one) => one.code === code);
  const own = train?.motivePower.map(({ locomotive }) => locomotive) ?? [];
  const others = locomotives.filter((one) => !own.includes(one.code));
  const chosenFrom = own.includes(from) ? from : (own[0] ?? "");
  const chosenTo = others.some((one) => one.code === to) ? to : (others[0]?.code ?? "");
  const chosenRake = train?.rakes.includes(rake) ? rake : (train?.rakes[0] ?? "");
  const step = toStep();

  function toStep(): TryStep | null {
    switch (what) {
      case "move": {
        const much = Number(minutes.trim().replace(",", ".").replace("−", "-"));
        return minutes.trim() !== "" && much !== 0 && Math.abs(much) <= 1_440
          ? { do: "move", train: code, minutes: much }
          : null;
      }
      case "change-locomotive":
        return chosenFrom && chosenTo ? { do: what, train: code, from: chosenFrom, to: chosenTo } : null;
      case "leave-rake":
        return chosenRake ? { do: what, train: code, rake: chosenRake } : null;
      case "leave-train":
        return { do: what, train: code };
    }
  }

  return (
    <form
      class="try-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (step) onTry(step);
      }}
    >
      <SelectField
        label="Train"
        value={code}
        onValue={setCode}
        options={trains.map((one) => [one.code, `${one.code} ${one.name}`] as const)}
      />
      <SelectField
        label="What"
        value={what}
        onValue={(value) => setWhat(value as TryStep["do"])}
        options={WHATS}
      />
      {what === "move" && (
        <TextField label="Layout minutes later; earlier with −" value={minutes} onValue={setMinutes} />
      )}
      {what === "change-locomotive" && own.length > 0 && (
        <>
          {own.length > 1 && (
            <SelectField
              label="Instead of"
              value={chosenFrom}
              onValue={setFrom}
              options={own.map((one) => [one, one] as const)}
            />
          )}
          <SelectField
            label={own.length > 1 ? "Locomotive" : `Instead of ${own[0]}`}
            value={chosenTo}
            onValue={setTo}
            options={others.map(
              (one) => [one.code, `${one.code} ${one.name}, ${one.running.ma} mA running`] as const,
            )}
          />
        </>
      )}
      {what === "leave-rake" && (train?.rakes.length ?? 0) > 0 && (
        <SelectField
          label="Rake"
          value={chosenRake}
          onValue={setRake}
          options={(train?.rakes ?? []).map((one) => [one, one] as const)}
        />
      )}
      {what === "change-locomotive" && own.length === 0 && <p class="field-hint">It has no locomotive.</p>}
      {what === "leave-rake" && train?.rakes.length === 0 && <p class="field-hint">It has no rake.</p>}
      <button type="submit" class="primary" aria-disabled={step === null}>
        Try it
      </button>
    </form>
  );
}
