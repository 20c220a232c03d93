import { useId, useRef, useState } from "preact/hooks";
import type { ImportResult } from "../../../shared/transfer.ts";
import { Problem } from "../api/problem.ts";
import { exportRailway, importDocument } from "../api/start.ts";
import { useMe } from "../api/use-me.ts";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { importWords } from "./import-words.ts";

/** A document that was tried: what it would do is known before it is done. */
interface Tried {
  readonly name: string;
  readonly body: unknown;
  readonly result: ImportResult;
}

interface BringDocumentProps {
  readonly club: string;
  readonly onBrought: () => void;
}

/** Reads a document in, after a trial that says what it holds; or another club's railway, to try things with. */
export function BringDocument({ club, onBrought }: BringDocumentProps) {
  const id = useId();
  const chooser = useRef<HTMLInputElement>(null);
  const [tried, setTried] = useState<Tried | null>(null);
  const trial = useSubmit(async ({ name, body }: { name: string; body: () => Promise<unknown> }) => {
    setTried(null);
    const read = await body();
    setTried({ name, body: read, result: await importDocument(club, read, true) });
  });
  const bringing = useSubmit(async (document: unknown) => {
    await importDocument(club, document, false);
    onBrought();
  });
  const choose = (file: File | undefined) => {
    if (file) void trial.run({ name: file.name, body: () => readJson(file) });
  };
  return (
    <div class="bring">
      <label class="button" for={id}>
        Choose a document …
      </label>
      <input
        id={id}
        ref={chooser}
        class="visually-hidden"
        type="file"
        accept=".json,application/json"
        onChange={(event) => {
          choose(event.currentTarget.files?.[0]);
          // the same file, mended, may be chosen again
          event.currentTarget.value = "";
        }}
      />
      <Others
        than={club}
        isBusy={trial.isBusy}
        choose={(code, name) => void trial.run({ name, body: () => exportRailway(code) })}
      />
      <p role="status">{trial.isBusy && "Trying it …"}</p>
      <Refused problem={trial.problem ?? bringing.problem} />
      {tried && (
        <div class="said-so">
          <p>
            <strong>{tried.name}</strong> is sound. It brings{" "}
            {importWords(tried.result.counts) || "nothing new"}.
          </p>
          <button type="button" disabled={bringing.isBusy} onClick={() => void bringing.run(tried.body)}>
            {bringing.isBusy ? "Bringing it in …" : "Bring it in"}
          </button>
        </div>
      )}
    </div>
  );
}

interface OthersProps {
  readonly than: string;
  readonly isBusy: boolean;
  readonly choose: (club: string, name: string) => void;
}

/** One's other clubs, whose railway may be copied. */
function Others({ than, isBusy, choose }: OthersProps) {
  const others = useMe().clubs.filter(({ code }) => code !== than);
  return others.map(({ code, name }) => (
    <button
      key={code}
      type="button"
      class="tall"
      disabled={isBusy}
      onClick={() => choose(code, `The railway of ${name}`)}
    >
      Copy the railway of {name}
    </button>
  ));
}

async function readJson(file: File): Promise<unknown> {
  try {
    return JSON.parse(await file.text());
  } catch {
    throw new Problem(0, `${file.name} is not a JSON document.`, "", [
      "Choose a document as the service exports it.",
    ]);
  }
}
