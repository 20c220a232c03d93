import { useState } from "preact/hooks";
import type { BookingState } from "../../../shared/booking.ts";
import { Field, fieldText } from "../nights/field.tsx";
import { useDesk } from "./desk.ts";
import { moveBooking } from "./desk-service.ts";

/** What a press does, and what to say once it is done. */
const WORDS = {
  draft: ["Back to a draft", "The night is a draft again."],
  open: ["Open for claims", "The night is open: members may claim."],
  locked: ["Lock", "The night is locked: who does what stays as it is."],
  running: ["Start the night", "The night runs."],
  finished: ["Finish the night", "The night is over."],
  cancelled: ["Cancel the night", "The night is cancelled."],
} as const satisfies Record<BookingState, readonly [string, string]>;

/** The next state of a night that goes well. */
const FORWARD: Partial<Record<BookingState, BookingState>> = {
  draft: "open",
  open: "locked",
  locked: "running",
  running: "finished",
  cancelled: "draft",
};

/** Where the night may go from here: on with a large button, elsewhere with small ones. */
export function Moves() {
  const { booking } = useDesk();
  const [asked, setAsked] = useState<BookingState | null>(null);
  const move = useMove();
  const forward = FORWARD[booking.state];
  const stops = (booking.blocks ?? []).reduce((sum, { stops }) => sum + stops.length, 0);
  const isUnfit = (booking.blocks ?? []).some(({ unfit }) => unfit.length > 0);
  const needsReason = (to: BookingState) => to === "cancelled" || (to === "open" && stops > 0);
  const word = (to: BookingState) => {
    if (to === "open" && booking.state === "locked") return "Open again";
    if (to === "locked" && booking.state === "running") return "Back to locked";
    if (to === "running" && booking.state === "finished") return "It still runs";
    return to === "open" && stops > 0 ? "Open all the same" : WORDS[to][0];
  };
  const targets = booking.mayMoveTo.filter((to) => !(to === "open" && isUnfit));
  if (targets.length === 0) return null;
  return (
    <>
      <p class="moves">
        {targets.map((to) => (
          <button
            key={to}
            type="button"
            class={to === forward && !needsReason(to) ? "main-button" : "big-button"}
            {...(needsReason(to) && { "aria-expanded": asked === to })}
            onClick={() => (needsReason(to) ? setAsked(asked === to ? null : to) : move(to))}
          >
            {word(to)}
          </button>
        ))}
      </p>
      {asked !== null && targets.includes(asked) && (
        <Reason key={asked} to={asked} word={word(asked)} close={() => setAsked(null)} />
      )}
    </>
  );
}

function useMove() {
  const { address, deeds, version } = useDesk();
  return (to: BookingState, reason?: string) =>
    deeds.run({
      name: `move ${to} ${reason ?? ""}`,
      deed: (key) =>
        moveBooking(address, version(), { to, ...(reason === undefined ? {} : { reason }) }, key),
      tell: () => ({ text: WORDS[to][1] }),
    });
}

interface ReasonProps {
  readonly to: BookingState;
  readonly word: string;
  readonly close: () => void;
}

/** A reason that is kept: why a night is opened although something stops it, or why it does not take place. */
function Reason({ to, word, close }: ReasonProps) {
  const [reason, setReason] = useState("");
  const move = useMove();
  const submit = async (event: Event) => {
    event.preventDefault();
    if (await move(to, reason)) close();
  };
  return (
    <form class="live-form" onSubmit={submit}>
      <Field label="Why" hint="Kept with the night, for everybody to read" class="grows">
        <input
          value={reason}
          required
          maxLength={2000}
          // biome-ignore lint/a11y/noAutofocus: the press that opened it asked for it
          autoFocus
          onInput={(event) => setReason(fieldText(event))}
        />
      </Field>
      <button type="submit" class="big-button">
        {word}
      </button>
    </form>
  );
}
