import type { Night } from "../../../shared/night.ts";

type State = Night["booking"];

const WORDS = {
  draft: "Draft",
  open: "Open for claims",
  locked: "Locked",
  running: "Running",
  finished: "Finished",
  cancelled: "Cancelled",
} as const satisfies Record<State, string>;

/** How full the disc is says how far the night has come; a stroke through it, that it will not come. */
const SIGNS = {
  draft: <circle class="state-ring" cx="8" cy="8" r="6" />,
  open: (
    <>
      <circle class="state-ring" cx="8" cy="8" r="6" />
      <circle class="state-fill" cx="8" cy="8" r="2.5" />
    </>
  ),
  locked: (
    <>
      <circle class="state-ring" cx="8" cy="8" r="6" />
      <path class="state-fill" d="M8 2a6 6 0 0 1 0 12z" />
    </>
  ),
  running: <path class="state-fill" d="M3 2.5 14 8 3 13.5z" />,
  finished: <circle class="state-fill" cx="8" cy="8" r="6.5" />,
  cancelled: (
    <>
      <circle class="state-ring" cx="8" cy="8" r="6" />
      <path class="state-ring" d="M4 12 12 4" />
    </>
  ),
} as const satisfies Record<State, unknown>;

/** Where a night's booking stands, by shape and word. */
export function BookingState({ state }: { readonly state: State }) {
  return (
    <span class={`booking-state booking-${state}`}>
      <svg viewBox="0 0 16 16" width="15" height="15" aria-hidden="true">
        {SIGNS[state]}
      </svg>
      {WORDS[state]}
    </span>
  );
}
