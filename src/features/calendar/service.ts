import type { DatabaseClient } from "../../database/client.ts";
import { inTransaction } from "../../database/transaction.ts";
import { readTurns } from "../../database/turns.ts";
import { hashSecret, makeSecret } from "../../lib/secret.ts";
import { reachClub } from "../../records/reach-club.ts";
import { noAccount, noCalendar, noSession } from "./errors.ts";
import { nightEvent } from "./night-event.ts";
import { readNight } from "./store.ts";
import { turnEvent } from "./turn-event.ts";
import { writeCalendar } from "./write-calendar.ts";

export interface CalendarService {
  /**
   * A night as an iCalendar object.
   * @throws Refusal not-found
   */
  readSession(club: string, session: string): Promise<string>;
  /**
   * The secret of a new feed of the person's turns; the one before leads nowhere from then on.
   * @throws Refusal not-permitted without an account
   */
  makeFeed(person: string | null): Promise<string>;
  revokeFeed(person: string | null): Promise<void>;
  /**
   * The turns of whoever has this secret, in all their clubs.
   * @throws Refusal not-found, for a secret that was revoked as for one that never was
   */
  readFeed(secret: string): Promise<string>;
}

export function createCalendarService(database: DatabaseClient): CalendarService {
  return {
    readSession: async (clubCode, sessionCode) => {
      const club = await reachClub(database, clubCode);
      const night = await readNight(database, club.id, sessionCode);
      if (night === undefined) throw noSession(sessionCode);
      return writeCalendar(`${night.club}: ${night.name}`, [nightEvent(night, club.timeZone)]);
    },
    makeFeed: async (personId) => {
      if (personId === null) throw noAccount();
      const secret = makeSecret();
      const kept = { tokenHash: hashSecret(secret), createdAt: new Date() };
      await inTransaction(database, (transaction) =>
        transaction.calendarFeed.upsert({
          where: { personId },
          create: { personId, ...kept },
          update: kept,
        }),
      );
      return secret;
    },
    revokeFeed: async (personId) => {
      if (personId === null) throw noAccount();
      await inTransaction(database, (transaction) =>
        transaction.calendarFeed.deleteMany({ where: { personId } }),
      );
    },
    readFeed: async (secret) => {
      const feed = await database.calendarFeed.findUnique({ where: { tokenHash: hashSecret(secret) } });
      if (feed === null) throw noCalendar();
      const turns = await readTurns(database, { person: feed.personId });
      return writeCalendar("My turns", turns.map(turnEvent));
    },
  };
}
