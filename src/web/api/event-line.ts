import type { ClubEvent } from "../../../shared/trail.ts";

/** The part of the browser's EventSource that a line stands on. */
export interface Source {
  readonly readyState: number;
  onopen: (() => void) | null;
  onerror: (() => void) | null;
  onmessage: ((message: { readonly data: string }) => void) | null;
  close(): void;
}

export interface LineDeps {
  readonly open: () => Source;
  /** One event, as it comes. */
  readonly onEvent: (event: ClubEvent) => void;
  /** Anything may have changed since it was last read: the line was not up, and what it missed cannot be told. */
  readonly onGap: () => void;
  /** The line is down for longer than a blink, or up again. */
  readonly onLost: (isLost: boolean) => void;
  /** The service would not open the line at all, as when the sign-in has ended. */
  readonly onRefused: () => void;
}

/** `readyState` of a source that gave up; a source in any other state tries again by itself. HTML standard, 9.2. */
const CLOSED = 2;
/** A shorter break is mended before anyone need hear of it. */
const BLINK_MS = 2_000;
const FIRST_RETRY_MS = 1_000;
// a board that a night is run from must not stand still for long after its service is back
const LONGEST_RETRY_MS = 5_000;

/**
 * Keeps a line of events open until it is closed. It mends breaks itself, the browser asking for what it missed; where
 * the browser gives up it is dialled anew, slower each time. Every new line begins by telling of a gap.
 */
export function createEventLine({ open, onEvent, onGap, onLost, onRefused }: LineDeps) {
  let source: Source | null = null;
  let retryMs = FIRST_RETRY_MS;
  let isLost = false;
  let blink: ReturnType<typeof setTimeout> | undefined;
  let retry: ReturnType<typeof setTimeout> | undefined;

  const tell = (lost: boolean) => {
    clearTimeout(blink);
    blink = undefined;
    if (lost === isLost) return;
    isLost = lost;
    onLost(lost);
  };

  function dial(): void {
    const line = open();
    source = line;
    let isFirstOpening = true;
    line.onopen = () => {
      retryMs = FIRST_RETRY_MS;
      tell(false);
      // the same source asks for what it missed; a new one can't know what was read before it opened
      if (isFirstOpening) onGap();
      isFirstOpening = false;
    };
    line.onmessage = ({ data }) => onEvent(JSON.parse(data) as ClubEvent);
    line.onerror = () => {
      blink ??= setTimeout(() => tell(true), BLINK_MS);
      if (line.readyState !== CLOSED) return;
      onRefused();
      retry = setTimeout(dial, retryMs);
      retryMs = Math.min(retryMs * 2, LONGEST_RETRY_MS);
    };
  }

  function hangUp(): void {
    clearTimeout(blink);
    blink = undefined;
    clearTimeout(retry);
    source?.close();
    source = null;
  }

  dial();
  return {
    /** Lets go of the line for as long as nobody looks; says nothing of it. */
    rest: hangUp,
    /** Takes it up again. What changed meanwhile is a gap. */
    wake() {
      if (source === null) dial();
    },
    close: hangUp,
  };
}
