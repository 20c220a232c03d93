import type { TrailEntry } from "../api/trail.ts";
import { dayAndTime } from "../shell/instant.ts";
import { type Difference, differences } from "./differences.ts";
import { kindWords } from "./kind-words.ts";

interface TrailRowProps {
  readonly entry: TrailEntry;
  readonly timeZone: string;
}

/** One deed as a sentence, and what it changed under it. */
export function TrailRow({ entry, timeZone }: TrailRowProps) {
  const { at, person, deed, kind, code } = entry;
  const changed = differences(entry.before, entry.after);
  return (
    <li class="trail-row">
      <time class="quiet" dateTime={at}>
        {dayAndTime(at, timeZone)}
      </time>
      <div>
        <p>
          <span class={person ? "" : "quiet"}>{person?.name ?? "Somebody"}</span>{" "}
          <strong>
            {deed} {kindWords(kind)} {code}
          </strong>
        </p>
        {deed === "changed" ? <Changes changes={changed} /> : <Whole changes={changed} deed={deed} />}
      </div>
    </li>
  );
}

function Changes({ changes }: { readonly changes: readonly Difference[] }) {
  if (changes.length === 0) return null;
  return (
    <dl class="changes">
      {changes.map(({ field, was, is }) => (
        <div key={field}>
          <dt>{field}</dt>
          <dd>
            <Value value={was} />
            <span aria-hidden="true"> → </span>
            <span class="visually-hidden"> became </span>
            <Value value={is} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** All fields of a record that came or went: folded, since the sentence says the most of it. */
function Whole({ changes, deed }: { readonly changes: readonly Difference[]; readonly deed: string }) {
  if (changes.length === 0) return null;
  return (
    <details>
      <summary>{deed === "made" ? "With what" : "What it was"}</summary>
      <dl class="changes">
        {changes.map(({ field, was, is }) => (
          <div key={field}>
            <dt>{field}</dt>
            <dd>
              <Value value={is ?? was} />
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

const Value = ({ value }: { readonly value: string | null }) => (
  <span class={value === null ? "quiet" : ""}>{value ?? "nothing"}</span>
);
