import { useEffect, useRef, useState } from "preact/hooks";
import type { ClubEvent } from "../../../shared/trail.ts";
import { createEventLine, type Source } from "./event-line.ts";
import { askMeAgain } from "./me.ts";
import { clubPath } from "./service.ts";

/** Changes come in bursts, as when a night is copied: they are read again together. */
const BURST_MS = 150;

interface EventsOptions {
  /** Whether the page shows anything of what changed. Left out: it does. */
  readonly concerns?: (event: ClubEvent) => boolean;
  /** Reads again what the page shows. */
  readonly refresh: () => void;
}

/**
 * Keeps a page of a club fresh while it is looked at: `refresh` is called after every change that concerns it, and
 * after every break that may have hidden one. A page in the background lets go of its line, as browsers allow few to
 * one host, and catches up when it is looked at again.
 * @returns whether the line is lost, and with it the promise that what is shown is so
 */
export function useEvents(club: string, options: EventsOptions): { readonly isLost: boolean } {
  const [isLost, setLost] = useState(false);
  const latest = useRef(options);
  latest.current = options;
  useEffect(() => {
    let burst: ReturnType<typeof setTimeout> | undefined;
    const refreshSoon = () => {
      burst ??= setTimeout(() => {
        burst = undefined;
        latest.current.refresh();
      }, BURST_MS);
    };
    const line = createEventLine({
      open: () => new EventSource(`${clubPath(club)}/events`) as Source,
      onEvent: (event) => {
        if (latest.current.concerns?.(event) ?? true) refreshSoon();
      },
      onGap: refreshSoon,
      onLost: setLost,
      onRefused: () => void askMeAgain(),
    });
    const look = () => (document.hidden ? line.rest() : line.wake());
    document.addEventListener("visibilitychange", look);
    return () => {
      document.removeEventListener("visibilitychange", look);
      clearTimeout(burst);
      line.close();
    };
  }, [club]);
  return { isLost };
}
