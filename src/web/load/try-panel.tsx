import { useState } from "preact/hooks";
import type { KeepAnswer, TryAnswer } from "../../../shared/what-if.ts";
import { useMay } from "../api/use-me.ts";
import { newKey } from "../nights/use-deed.ts";
import { SeverityMark } from "../shell/marks.tsx";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { keepTry, type SlotCodes, type Start } from "./load-service.ts";
import { stepWords } from "./try-address.ts";
import { TryForm } from "./try-form.tsx";
import type { Tries } from "./use-tries.ts";

interface TryPanelProps {
  readonly codes: SlotCodes;
  readonly start: Start;
  readonly tries: Tries;
}

/** Try it: nothing is kept until somebody says so. */
export function TryPanel({ codes, start, tries }: TryPanelProps) {
  const { steps, answer, isAsking, problem } = tries;
  return (
    <section class="try-panel" aria-labelledby="try-heading">
      <h2 id="try-heading">Try it</h2>
      <p class="quiet">The curves change as you try. Nothing is kept until you say so.</p>
      {start.trains.length > 0 && <TryForm start={start} onTry={tries.add} />}
      {steps.length > 0 && (
        <>
          <h3>Tried, not kept</h3>
          <ol class="try-steps">
            {steps.map((step, at) => (
              <li key={`${at} ${stepWords(step)}`}>
                <span>{stepWords(step)}</span>
                <button type="button" class="quiet-button" onClick={() => tries.remove(at)}>
                  Take back<span class="visually-hidden">: {stepWords(step)}</span>
                </button>
              </li>
            ))}
          </ol>
          <p role="status" class="quiet">
            {isAsking ? "Adding up …" : ""}
          </p>
          <Refused problem={problem} />
          {answer && !isAsking && <WhatChanges answer={answer} />}
          <div class="try-ends">
            <button type="button" onClick={tries.clear}>
              Back to the night as it is
            </button>
          </div>
          {answer && !problem && <Keep codes={codes} tries={tries} />}
        </>
      )}
    </section>
  );
}

/** What the check says that it did not say before, and what it no longer says. */
function WhatChanges({ answer: { appears, clears } }: { readonly answer: TryAnswer }) {
  if (appears.length === 0 && clears.length === 0)
    return <p>The check finds the same as before; only the curves differ.</p>;
  return (
    <>
      {clears.length > 0 && (
        <>
          <h4>No longer found</h4>
          <ul class="load-findings">
            {clears.map(({ code, severity, sentence }) => (
              <li key={`${code} ${sentence}`} class="finding-cleared">
                <SeverityMark severity={severity} /> {sentence}
              </li>
            ))}
          </ul>
        </>
      )}
      {appears.length > 0 && (
        <>
          <h4>Found only so</h4>
          <ul class="load-findings">
            {appears.map(({ code, severity, sentence }) => (
              <li key={`${code} ${sentence}`}>
                <SeverityMark severity={severity} /> {sentence}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** A new draft of the timetable; the night goes on with the version it has. */
function Keep({ codes, tries }: Pick<TryPanelProps, "codes" | "tries">) {
  const may = useMay(codes.club, "keep-timetables");
  const [note, setNote] = useState("");
  const [kept, setKept] = useState<KeepAnswer | null>(null);
  const keep = useSubmit(async () => {
    setKept(await keepTry(codes, tries.steps, note, newKey()));
  });
  if (!may) return <p class="quiet">Somebody who keeps timetables can make a draft of this.</p>;
  return (
    <form onSubmit={keep.submit} class="try-keep">
      <TextField label="Note on the draft" value={note} onValue={setNote} isOptional maxLength={2_000} />
      <button type="submit">Keep as a draft of the timetable</button>
      <Refused problem={keep.problem} />
      <p role="status">
        {kept &&
          `Kept as version ${kept.version.number} of ${kept.timetable}, a draft. The night still runs the version it had.`}
      </p>
    </form>
  );
}
