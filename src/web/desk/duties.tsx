import { useState } from "preact/hooks";
import type { Duty, DutyKind } from "../../../shared/booking.ts";
import type { Board } from "../../../shared/claims.ts";
import { clubPath } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { Field, fieldText } from "../nights/field.tsx";
import { readAll } from "../nights/night-records.ts";
import { useDesk } from "./desk.ts";
import { addDuty, listDuties, removeDuty } from "./desk-service.ts";

// the list itself comes with its schema, which no page needs
const KINDS = ["signalling", "yard", "marshal", "other"] as const satisfies readonly DutyKind[];

/** The standing duties of each slot, to add to and take from. */
export function Duties() {
  const { boards, booking } = useDesk();
  const count = booking.manning.duties;
  return (
    <details class="fold">
      <summary>Standing duties: {count === 0 ? "none" : count}</summary>
      {boards.map((board) => (
        <SlotDuties key={board.slot} board={board} />
      ))}
    </details>
  );
}

function SlotDuties({ board }: { readonly board: Board }) {
  const { address, deeds } = useDesk();
  const remove = (code: string, name: string) =>
    void deeds.run({
      name: `remove duty ${board.slot} ${code}`,
      deed: async () => {
        // its version is not on the board
        const all = await listDuties(address, board.slot, new AbortController().signal);
        const duty = all.find((d) => d.code === code);
        if (!duty) return null;
        await removeDuty(address, board.slot, duty);
        return duty;
      },
      tell: (duty) => ({
        text: `${name} is taken off.`,
        undo: duty
          ? () => {
              const { version: _, ...body } = duty;
              add(toBody(body));
            }
          : undefined,
      }),
    });
  const add = (body: Partial<Duty>) =>
    void deeds.run({
      name: `add duty ${board.slot} ${JSON.stringify(body)}`,
      deed: (key) => addDuty(address, board.slot, body, key),
      tell: () => ({ text: `${body.name} is a duty of ${board.slotName}.` }),
    });
  return (
    <div class="slot-duties">
      <h3>{board.slotName}</h3>
      <ul class="parts">
        {board.duties.map(({ code, name, kind, claim }) => (
          <li key={code}>
            <span>
              {name} <span class="quiet">{kind}</span> {claim && <span class="quiet">{claim.name}</span>}
            </span>
            <button
              type="button"
              class="big-button"
              aria-label={`Take off ${name}`}
              onClick={() => remove(code, name)}
            >
              Take off
            </button>
          </li>
        ))}
      </ul>
      <DutyForm board={board} add={add} />
    </div>
  );
}

/** Only what a duty is made of: the service adds more to what it answers. */
function toBody({ code, name, kind, place, startsAt, endsAt, requires, note }: Duty): Duty {
  return { code, name, kind, place, startsAt, endsAt, requires, note };
}

/** A code from a name: `Signals at Oakwater` becomes `signals-at-oakwater`. */
export function codeFrom(name: string, taken: ReadonlySet<string>): string {
  const stem =
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-|-$/g, "")
      .slice(0, 36) || "duty";
  let code = stem;
  for (let n = 2; taken.has(code); n++) code = `${stem}-${n}`;
  return code;
}

interface DutyFormProps {
  readonly board: Board;
  readonly add: (body: Partial<Duty>) => void;
}

function DutyForm({ board, add }: DutyFormProps) {
  const { address } = useDesk();
  const [name, setName] = useState("");
  const [kind, setKind] = useState<DutyKind>("signalling");
  const [place, setPlace] = useState("");
  const places = useLoad(address.club, (signal) =>
    readAll<{ readonly code: string; readonly name: string }>(`${clubPath(address.club)}/places`, signal),
  );
  const submit = (event: Event) => {
    event.preventDefault();
    const code = codeFrom(name, new Set(board.duties.map((duty) => duty.code)));
    add({ code, name, kind, place: place === "" ? null : place });
    setName("");
  };
  return (
    <form class="live-form" onSubmit={submit}>
      <Field label="A duty" class="grows">
        <input
          value={name}
          required
          maxLength={120}
          placeholder="Signals at the junction"
          onInput={(event) => setName(fieldText(event))}
        />
      </Field>
      <Field label="Kind">
        <select value={kind} onChange={(event) => setKind(fieldText(event) as DutyKind)}>
          {KINDS.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </Field>
      <Field label="Place">
        <select value={place} onChange={(event) => setPlace(fieldText(event))}>
          <option value="">nowhere in particular</option>
          {(places.status === "ready" ? places.value : []).map(({ code, name: placeName }) => (
            <option key={code} value={code}>
              {placeName}
            </option>
          ))}
        </select>
      </Field>
      <button type="submit" class="big-button">
        Add it
      </button>
    </form>
  );
}
