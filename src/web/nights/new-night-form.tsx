import { useState } from "preact/hooks";
import type { Session } from "../../../shared/sessions.ts";
import { Field, fieldText } from "./field.tsx";
import { dateInWords, type NightDraft, type SlotDraft, toSession } from "./night-draft.ts";
import { SlotFields, type VersionChoice } from "./slot-fields.tsx";

interface NewNightFormProps {
  readonly start: NightDraft;
  readonly versions: readonly VersionChoice[];
  /** Codes of the nights there are. */
  readonly taken: ReadonlySet<string>;
  readonly isBusy: boolean;
  readonly make: (session: Session) => void;
}

/** Date, hours, ratio, timetable and areas of a night, filled in as far as they can be guessed. */
export function NewNightForm({ start, versions, taken, isBusy, make }: NewNightFormProps) {
  const [draft, setDraft] = useState(start);
  const change = (part: Partial<NightDraft>) => setDraft((before) => ({ ...before, ...part }));
  const changeSlot = (at: number, slot: SlotDraft) =>
    change({ slots: draft.slots.map((s, i) => (i === at ? slot : s)) });
  const submit = (event: Event) => {
    event.preventDefault();
    make(toSession(draft, taken));
  };
  return (
    <form class="new-night" onSubmit={submit}>
      <div class="new-night-row">
        <Field label="Date">
          <input
            type="date"
            value={draft.date}
            required
            onInput={(event) => fieldText(event) && change({ date: fieldText(event) })}
          />
        </Field>
        <Field label="Name" class="grows">
          <input
            value={draft.name ?? dateInWords(draft.date)}
            required
            maxLength={120}
            onInput={(event) => change({ name: fieldText(event) })}
          />
        </Field>
        <Field label="Layout clock, times as fast">
          <input
            type="number"
            value={draft.clockRatio}
            required
            min={0.1}
            max={60}
            step={0.1}
            onInput={(event) => change({ clockRatio: Number(fieldText(event)) })}
          />
        </Field>
      </div>
      {draft.slots.map((slot, at) => (
        <SlotFields
          key={slot.code}
          slot={slot}
          versions={versions}
          change={(next) => changeSlot(at, next)}
          remove={
            draft.slots.length > 1
              ? () => change({ slots: draft.slots.filter((_, i) => i !== at) })
              : undefined
          }
        />
      ))}
      <Areas areas={draft.areas} change={(areas) => change({ areas })} />
      <p>
        <button type="submit" class="main-button" disabled={isBusy}>
          {isBusy ? "Making it …" : "Make this night"}
        </button>{" "}
        <span class="quiet">It starts as a draft: nobody can claim a train before you open it.</span>
      </p>
    </form>
  );
}

interface AreasProps {
  readonly areas: Session["areas"];
  readonly change: (areas: Session["areas"]) => void;
}

/** Whether each area of the railway runs analog or digital. */
function Areas({ areas, change }: AreasProps) {
  if (areas.length === 0) return null;
  return (
    <fieldset class="slot-fields">
      <legend>Areas</legend>
      {areas.map(({ area, control }) => (
        <Field key={area} label={area}>
          <select
            value={control}
            onChange={(event) => {
              const wanted = fieldText(event) === "analog" ? "analog" : "digital";
              change(areas.map((a) => (a.area === area ? { area, control: wanted } : a)));
            }}
          >
            <option value="digital">digital</option>
            <option value="analog">analog</option>
          </select>
        </Field>
      ))}
    </fieldset>
  );
}
