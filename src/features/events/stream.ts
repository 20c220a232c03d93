import { PassThrough } from "node:stream";
import type { ClubEvent } from "../../../shared/trail.ts";

// a reader that lags by this much is cut off: it comes back and asks for what it missed
const MOST_UNREAD_BYTES = 512 * 1024;
const RETRY_MS = 1_000;

export type EventStream = ReturnType<typeof createEventStream>;

/**
 * An answer in the form of server-sent events (HTML standard, section 9.2), from `position` on. Until `begin` it keeps
 * what it is told to itself; it never tells one event twice.
 */
export function createEventStream(position: number) {
  const body = new PassThrough();
  let told = position;
  let waiting: (readonly ClubEvent[])[] | undefined = [];

  function write(text: string): void {
    if (body.writableEnded || body.destroyed) return;
    if (body.writableLength + body.readableLength > MOST_UNREAD_BYTES) body.destroy();
    else body.write(text);
  }

  function send(events: readonly ClubEvent[]): void {
    const fresh = events.filter(({ seq }) => seq > told);
    told = fresh.at(-1)?.seq ?? told;
    if (fresh.length > 0) write(fresh.map(toText).join(""));
  }

  // an id without data reaches the reader's memory and no handler: it can ask for what comes after, even if nothing came
  write(`retry: ${RETRY_MS}\nid: ${position}\n\n`);

  return {
    body,
    tell: (events: readonly ClubEvent[]) => void (waiting ? waiting.push(events) : send(events)),
    /** Sends what was missed, then what it was told meanwhile, and from now on what it is told. */
    begin(missed: readonly ClubEvent[]): void {
      send(missed);
      for (const events of waiting ?? []) send(events);
      waiting = undefined;
    },
    /** Shows both ends, and whatever is between them, that the line still stands. */
    beat: () => write(": \n\n"),
    end: () => void body.end(),
  };
}

const toText = (event: ClubEvent) => `id: ${event.seq}\ndata: ${JSON.stringify(event)}\n\n`;
