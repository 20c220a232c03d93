import { useEffect, useState } from "preact/hooks";
import type { MappedResult, RosterMapping, SuggestedMapping } from "../../../shared/mapped-import.ts";
import { rosterAddress } from "../addresses.ts";
import { change } from "../api/ask.ts";
import { clubPath, readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Page } from "../shell/page.tsx";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { MappingForm } from "./mapping-form.tsx";
import { Outcome } from "./outcome.tsx";

/** Spreadsheets save as UTF-8 or, older ones, as Windows-1252, in which every byte is some letter. */
function decodeSheet(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

interface Looked {
  readonly text: string;
  readonly sheet: SuggestedMapping;
}

/** A sheet, and how its columns are read. */
interface Reading {
  readonly text: string;
  readonly mapping: RosterMapping;
}

interface Tried extends Reading {
  readonly result: MappedResult;
}

/** The answer lists so many at most. */
const MOST_LISTED = 100;

const sayHowMany = ({ locomotives: { length } }: MappedResult) =>
  length === MOST_LISTED ? "all of them" : `these ${length}`;

const sheetPath = (club: string) => `${clubPath(club)}/roster-sheet`;

/** A spreadsheet of locomotives, brought in by saying which column holds what. */
export function RosterImportPage({ club = "" }: { readonly club?: string }) {
  const load = useLoad(club, (signal) => readClub(club, signal));
  const name = load.status === "ready" ? load.value.name : null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  const [text, setText] = useState("");
  const [looked, setLooked] = useState<Looked | null>(null);
  const [mapping, setMapping] = useState<RosterMapping | null>(null);
  const [last, setLast] = useState<Tried | null>(null);
  // whatever was typed since is another sheet, or another reading of it
  const sheet = looked?.text === text ? looked.sheet : null;
  const tried = last?.text === text && last.mapping === mapping ? last : null;
  const look = useSubmit(async () => {
    const { value } = await change<SuggestedMapping>("POST", `${sheetPath(club)}/columns`, {
      body: { text },
    });
    setLooked({ text, sheet: value });
    setMapping(value.mapping);
  });
  const bring = useSubmit<Reading & { readonly dryRun: boolean }>(async ({ text, mapping, dryRun }) => {
    const { value } = await change<MappedResult>("POST", sheetPath(club), {
      body: { text, mapping, dryRun },
    });
    setLast({ text, mapping, result: value });
  });
  const changeMapping = (next: RosterMapping) => {
    setMapping(next);
    bring.forget();
  };
  return (
    <Page title={`Bring in a roster · ${name ?? club}`} heading="Bring in a roster" class="import-page">
      <p>
        <a href={rosterAddress(club)}>The roster</a>. Save your spreadsheet as CSV, whatever its columns and
        units are; nothing is kept until you have seen what would be.
      </p>
      <form onSubmit={look.submit} class="form">
        <div class="field">
          <label for="sheet-file">The file</label>
          <input
            id="sheet-file"
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? [];
              void file?.arrayBuffer().then((bytes) => setText(decodeSheet(bytes)));
            }}
          />
        </div>
        <div class="field">
          <label for="sheet-text">or its text</label>
          <textarea
            id="sheet-text"
            rows={6}
            spellcheck={false}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </div>
        <div class="form-end">
          <button type="submit" class="primary" aria-disabled={text.trim() === ""}>
            Look at its columns
          </button>
        </div>
        <Refused problem={look.problem} />
      </form>
      {sheet && (
        <section aria-labelledby="columns-heading">
          <h2 id="columns-heading">
            {sheet.rows} rows in {sheet.headings.length} columns: which holds what?
          </h2>
          <Samples sheet={sheet} />
          {mapping === null ? (
            <p>No column looks like a number that tells the locomotives apart: the sheet needs one.</p>
          ) : (
            <>
              <MappingForm headings={sheet.headings} mapping={mapping} onMapping={changeMapping} />
              <div class="form-end">
                <button
                  type="button"
                  class="primary"
                  onClick={() => void bring.run({ text, mapping, dryRun: true })}
                >
                  Try it
                </button>
                {tried?.result.dryRun && (
                  <button type="button" onClick={() => void bring.run({ ...tried, dryRun: false })}>
                    Bring in {sayHowMany(tried.result)}
                  </button>
                )}
              </div>
              <Outcome club={club} problem={bring.problem} result={tried?.result ?? null} />
            </>
          )}
        </section>
      )}
    </Page>
  );
}

function Samples({ sheet: { headings, samples } }: { readonly sheet: SuggestedMapping }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard
    <section class="wide-frame" tabIndex={0} aria-label="The first rows of the sheet">
      <table class="records">
        <caption class="visually-hidden">The first rows of the sheet</caption>
        <thead>
          <tr>
            {headings.map((heading, i) => (
              <th key={`${i} ${heading}`} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {samples.map((row, i) => (
            <tr key={i}>
              {headings.map((heading, j) => (
                <td key={`${j} ${heading}`}>{row[j]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
