import type { DatabaseClient } from "../../database/client.ts";
import { reachClub } from "../../records/reach-club.ts";
import { noSession } from "./errors.ts";
import { nightEvent } from "./night-event.ts";
import { readNight } from "./store.ts";
import { writeCalendar } from "./write-calendar.ts";

export interface CalendarService {
  /**
   * A night as an iCalendar object.
   * @throws Refusal not-found
   */
  readSession(club: string, session: string): Promise<string>;
}

export function createCalendarService(database: DatabaseClient): CalendarService {
  return {
    readSession: async (clubCode, sessionCode) => {
      const club = await reachClub(database, clubCode);
      const night = await readNight(database, club.id, sessionCode);
      if (night === undefined) throw noSession(sessionCode);
      return writeCalendar(`${night.club}: ${night.name}`, [nightEvent(night, club.timeZone)]);
    },
  };
}
