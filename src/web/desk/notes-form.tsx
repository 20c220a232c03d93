import { useState } from "preact/hooks";
import { Field, fieldText } from "../nights/field.tsx";
import { toInstant, toWall } from "../nights/zoned-time.ts";
import { useDesk } from "./desk.ts";
import { saveBooking } from "./desk-service.ts";

interface NotesDraft {
  readonly noteToAll: string;
  readonly venueNote: string;
  /** By the club room's clock, as a browser's field has it; empty for no such rule. */
  readonly second: string;
}

/** What everybody should know of the night, and from when a second train may be claimed. */
export function NotesForm() {
  const { address, booking, deeds, version, timeZone } = useDesk();
  // only what was typed here: what somebody else saved meanwhile shows in the other fields
  const [typed, setTyped] = useState<Partial<NotesDraft>>({});
  const { noteToAll, venueNote, secondClaimFrom } = booking;
  const saved = {
    noteToAll,
    venueNote,
    second: secondClaimFrom === null ? "" : toWall(secondClaimFrom, timeZone),
  };
  const draft: NotesDraft = { ...saved, ...typed };
  const type = (field: keyof NotesDraft) => (event: Event) =>
    setTyped((before) => ({ ...before, [field]: fieldText(event) }));
  const submit = async (event: Event) => {
    event.preventDefault();
    const { second, ...notes } = draft;
    const body = {
      ...notes,
      secondClaimFrom: second === "" ? null : toInstant(second, timeZone),
      attending: booking.attending,
    };
    const isSaved = await deeds.run({
      name: `notes ${JSON.stringify(body)}`,
      deed: () => saveBooking(address, version(), body),
      tell: () => ({ text: "The notes are saved." }),
    });
    if (isSaved) setTyped({});
  };
  return (
    <form class="notes" onSubmit={submit}>
      <Field label="Note to all" hint="On top of everybody's board">
        <textarea rows={2} value={draft.noteToAll} maxLength={2000} onInput={type("noteToAll")} />
      </Field>
      <Field label="Venue" hint="Where to come, where to park, what to bring">
        <textarea rows={2} value={draft.venueNote} maxLength={2000} onInput={type("venueNote")} />
      </Field>
      <Field label="A second train from" hint="Nobody may claim two before; empty: no such rule">
        <input type="datetime-local" value={draft.second} onInput={type("second")} />
      </Field>
      <p>
        <button type="submit" class="big-button">
          Save the notes
        </button>
      </p>
    </form>
  );
}
