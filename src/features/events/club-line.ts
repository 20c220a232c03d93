import type { ClubEvent } from "../../../shared/trail.ts";
import type { Database } from "../../database/client.ts";
import { readEvents, readPosition } from "./store.ts";

/** Whoever wants to hear of a club's changes. */
export interface Hearer {
  /** In order; may repeat what it was told before. */
  tell(events: readonly ClubEvent[]): void;
}

const AT_ONCE = 500;

export type ClubLine = ReturnType<typeof createClubLine>;

/**
 * Reads a club's changes once for all in this process who want to hear of them. It goes by numbers alone: a notice only
 * says that there may be something to read.
 */
export function createClubLine(database: Database, clubId: string) {
  const hearers = new Set<Hearer>();
  let position: number | undefined;
  let reading: Promise<void> | undefined;
  let isAsked = false;

  async function readOn(): Promise<void> {
    try {
      position ??= await readPosition(database, clubId);
      for (let isMore = true; isMore; ) {
        isAsked = false;
        const events = await readEvents(database, clubId, position, AT_ONCE);
        position = events.at(-1)?.seq ?? position;
        if (events.length > 0) for (const hearer of hearers) hearer.tell(events);
        isMore = isAsked || events.length === AT_ONCE;
      }
    } finally {
      // in the same breath as the last look at isAsked: whoever asks from here on is read for anew
      reading = undefined;
    }
  }

  return {
    clubId,
    hearers,
    /** Number up to which the hearers were told. */
    get position(): number {
      return position ?? 0;
    },
    /** Tells of all that was committed before this call; rejects where the database does not answer. */
    async catchUp(): Promise<void> {
      isAsked = true;
      reading ??= readOn();
      await reading;
    },
  };
}

/** The lines in use. One that nobody uses is forgotten: it would have to read what nobody hears. */
export function createClubLines(database: Database) {
  const inUse = new Map<string, { readonly line: ClubLine; users: number }>();
  return {
    find: (clubId: string) => inUse.get(clubId)?.line,
    all: () => [...inUse.values()].map(({ line }) => line),
    /** Give it back in the end. */
    take(clubId: string): ClubLine {
      const use = inUse.get(clubId) ?? { line: createClubLine(database, clubId), users: 0 };
      use.users++;
      inUse.set(clubId, use);
      return use.line;
    },
    giveBack({ clubId }: ClubLine): void {
      const use = inUse.get(clubId);
      if (use && --use.users === 0) inUse.delete(clubId);
    },
  };
}
