import { useEffect, useState } from "preact/hooks";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import { KINDS, kindWords } from "./kind-words.ts";
import { type TrailAddress, WHOLE_TRAIL, writeTrailAddress } from "./trail-address.ts";

interface TrailFiltersProps {
  readonly filter: TrailAddress;
  /** Names of those who did something that was shown, by id. */
  readonly people: ReadonlyMap<string, string>;
  readonly onFilter: (filter: TrailAddress) => void;
}

/** A pause in typing that long is the end of a word. */
const PAUSE_MS = 400;

/** Which part of the trail is looked at; each choice holds at once. */
export function TrailFilters({ filter, people, onFilter }: TrailFiltersProps) {
  const [code, setCode] = useState(filter.code);
  useEffect(() => setCode(filter.code), [filter.code]);
  // a code is asked for once it is written, not letter by letter
  useEffect(() => {
    if (code === filter.code) return;
    const pause = setTimeout(() => onFilter({ ...filter, code: code.trim() }), PAUSE_MS);
    return () => clearTimeout(pause);
  }, [code, filter, onFilter]);
  const put = (part: Partial<TrailAddress>) => onFilter({ ...filter, ...part });
  const kinds = Object.fromEntries([["", "Everything"], ...KINDS.map((kind) => [kind, kindWords(kind)])]);
  const unnamed = filter.person !== "" && !people.has(filter.person) ? [[filter.person, "…"]] : [];
  const names = Object.fromEntries([["", "Everyone"], ...unnamed, ...people]);
  return (
    <form class="filters" onSubmit={(event) => event.preventDefault()}>
      <SelectField label="What" value={filter.kind} onValue={(kind) => put({ kind })} options={kinds} />
      <TextField label="Its code" isPlain isOptional value={code} onValue={setCode} />
      <SelectField label="Who" value={filter.person} onValue={(person) => put({ person })} options={names} />
      <TextField
        label="From"
        type="date"
        isPlain
        isOptional
        value={filter.from}
        onValue={(from) => put({ from })}
      />
      <TextField label="To" type="date" isPlain isOptional value={filter.to} onValue={(to) => put({ to })} />
      {writeTrailAddress(filter) !== "" && (
        <button type="button" class="tall" onClick={() => onFilter(WHOLE_TRAIL)}>
          Show all
        </button>
      )}
    </form>
  );
}
