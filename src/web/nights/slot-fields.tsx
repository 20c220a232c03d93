import { Field, fieldText } from "./field.tsx";
import type { SlotDraft } from "./night-draft.ts";

/** A timetable version that a slot may run. */
export interface VersionChoice {
  readonly timetable: string;
  readonly version: number;
  readonly isIssued: boolean;
  /** `Weekday, version 2 (draft)`. */
  readonly text: string;
}

interface SlotFieldsProps {
  readonly slot: SlotDraft;
  readonly versions: readonly VersionChoice[];
  readonly change: (slot: SlotDraft) => void;
  /** Undefined for the last one left: a night has at least one. */
  readonly remove: (() => void) | undefined;
}

/** Hours, layout clock and timetable of one slot. */
export function SlotFields({ slot, versions, change, remove }: SlotFieldsProps) {
  const set = (field: "name" | "start" | "end" | "layoutStart") => (event: Event) =>
    change({ ...slot, [field]: fieldText(event) });
  const choose = (event: Event) => {
    const choice = versions[Number(fieldText(event))];
    if (choice) change({ ...slot, timetable: choice.timetable, timetableVersion: choice.version });
  };
  const chosen = versions.findIndex(
    ({ timetable, version }) => timetable === slot.timetable && version === slot.timetableVersion,
  );
  return (
    <fieldset class="slot-fields">
      <legend>{slot.name || "Slot"}</legend>
      <Field label="Name">
        <input value={slot.name} onInput={set("name")} required maxLength={120} />
      </Field>
      <Field label="From">
        <input type="time" value={slot.start} onInput={set("start")} required />
      </Field>
      <Field label="To">
        <input type="time" value={slot.end} onInput={set("end")} required />
      </Field>
      <Field label="Layout clock starts at">
        <input
          value={slot.layoutStart}
          onInput={set("layoutStart")}
          required
          pattern="\d{1,2}:[0-5]\d(:[0-5]\d)?"
          title="As 6:40 or 19:35"
          inputMode="numeric"
          size={6}
        />
      </Field>
      <Field label="Timetable">
        <select value={String(chosen)} onChange={choose} required>
          {versions.map(({ text }, at) => (
            <option key={text} value={String(at)}>
              {text}
            </option>
          ))}
        </select>
      </Field>
      {remove && (
        <button type="button" class="quiet-button" onClick={remove}>
          Leave this slot out
        </button>
      )}
    </fieldset>
  );
}
