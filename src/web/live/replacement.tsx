import { useState } from "preact/hooks";
import type { Candidate, NightTrain } from "../../../shared/night.ts";
import { useLoad } from "../api/use-load.ts";
import { Field, fieldText } from "../nights/field.tsx";
import { Loaded } from "../shell/loaded.tsx";
import { replaceLocomotive, useBoard } from "./board.ts";
import { readCandidates } from "./night-service.ts";

interface ReplacementProps {
  readonly train: NightTrain;
  /** The one that failed. */
  readonly locomotive: string;
}

/** What can take a failed locomotive's place, those that suit first. */
export function Replacement({ train, locomotive }: ReplacementProps) {
  const board = useBoard();
  const [note, setNote] = useState("");
  const { club, night } = board;
  const address = { club, session: night.session, slot: train.slot, train: train.train };
  const load = useLoad(`${train.slot} ${train.train} ${locomotive}`, (signal) =>
    readCandidates(address, locomotive, signal),
  );
  const take = (replacement: string | null) =>
    board.act(replaceLocomotive(train, locomotive, replacement, note));
  return (
    <div class="replacement">
      <Field label={`What is wrong with ${locomotive}`} hint="Kept as a defect on its record">
        <input value={note} maxLength={500} onInput={(event) => setNote(fieldText(event))} />
      </Field>
      <Loaded load={load} what="Looking for another">
        {({ items }) => (
          <>
            <Suiting items={items.filter(({ suits }) => suits)} take={take} />
            <p>
              <button type="button" class="big-button" onClick={() => take(null)}>
                None yet: note the failure
              </button>
            </p>
            <NotSuiting items={items.filter(({ suits }) => !suits)} />
          </>
        )}
      </Loaded>
    </div>
  );
}

interface SuitingProps {
  readonly items: readonly Candidate[];
  readonly take: (code: string) => void;
}

function Suiting({ items, take }: SuitingProps) {
  if (items.length === 0) return <p>No other locomotive suits this train.</p>;
  return (
    <ul class="candidates">
      {items.map(({ code, name, address, warnings, neededFrom }) => (
        <li key={code}>
          <button type="button" class="big-button" onClick={() => take(code)}>
            Take {code}
          </button>
          <span>
            {name}
            {address && `, address ${address.number}`}
            {neededFrom !== null && `; needed again at ${neededFrom}`}
            {warnings.map((warning) => (
              <span key={warning} class="candidate-warning">
                {warning}
              </span>
            ))}
          </span>
        </li>
      ))}
    </ul>
  );
}

function NotSuiting({ items }: { readonly items: readonly Candidate[] }) {
  if (items.length === 0) return null;
  return (
    <details class="fold">
      <summary>{items.length} that do not suit</summary>
      <ul class="reasons">
        {items.map(({ code, reasons }) => (
          <li key={code}>
            <b>{code}</b> {reasons.join(" ")}
          </li>
        ))}
      </ul>
    </details>
  );
}
