import type { TrailEntry } from "../../../shared/trail.ts";
import { dayAndTime } from "../shell/instant.ts";
import { type Difference, differences } from "./differences.ts";
import { kindWords } from "./kind-words.ts";

interface TrailRowProps {
  readonly entry: TrailEntry;
  readonly timeZone: string;
  /** Shows all that a person did. */
  readonly onPerson: (person: string) => void;
}

/** One deed as a sentence, and what it changed under it. */
export function TrailRow({ entry, timeZone, onPerson }: TrailRowProps) {
  const { at, by, deed, kind, code } = entry;
  const changed = differences(entry.changes, timeZone);
  const where = whereabouts(entry);
  return (
    <li class="trail-row">
      <time class="quiet" dateTime={at}>
        {dayAndTime(at, timeZone)}
      </time>
      <div>
        <p>
          {by?.name ? (
            <button type="button" class="as-text" onClick={() => onPerson(by.person)}>
              {by.name}
            </button>
          ) : (
            <span class="quiet">{by ? "Someone who was erased" : "Somebody"}</span>
          )}{" "}
          <strong>
            {deed} {kindWords(kind)} {code}
          </strong>
          {where && <span class="quiet"> {where}</span>}
        </p>
        {deed === "changed" ? <Changes changes={changed} /> : <Whole changes={changed} deed={deed} />}
      </div>
    </li>
  );
}

/** The night or timetable that a record belongs to. */
function whereabouts({ kind, session, slot, timetableVersion }: TrailEntry): string {
  if (timetableVersion !== null && kind === "train") return `of timetable ${timetableVersion}`;
  if (session === null || kind === "session") return "";
  return `on night ${session}${slot === null ? "" : `, ${slot}`}`;
}

function Changes({ changes }: { readonly changes: readonly Difference[] }) {
  if (changes.length === 0) return null;
  return (
    <dl class="changes">
      {changes.map(({ field, was, is, isWithheld }) => (
        <div key={field}>
          <dt>{field}</dt>
          <dd>
            {isWithheld ? (
              <Withheld />
            ) : (
              <>
                <Value value={was} />
                <span aria-hidden="true"> → </span>
                <span class="visually-hidden"> became </span>
                <Value value={is} />
              </>
            )}
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
        {changes.map(({ field, was, is, isWithheld }) => (
          <div key={field}>
            <dt>{field}</dt>
            <dd>{isWithheld ? <Withheld /> : <Value value={is ?? was} />}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

const Value = ({ value }: { readonly value: string | null }) => (
  <span class={value === null ? "quiet" : ""}>{value ?? "nothing"}</span>
);

const Withheld = () => <span class="quiet">not kept here</span>;
