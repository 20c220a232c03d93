import type { DatabaseClient } from "../../database/client.ts";
import { readClubParts, readTrains } from "../../database/records/read-plan.ts";
import { inTransaction } from "../../database/transaction.ts";
import { Refusal } from "../../lib/refusal.ts";
import { reachClub } from "../../records/reach-club.ts";
import { readSlot, type SlotAddress } from "../../records/read-slot.ts";
import type { StoredTimetable, TimetableAddress } from "./whole-timetable.ts";

export type CostingStore = ReturnType<typeof createCostingStore>;

export const createCostingStore = (database: DatabaseClient) => ({
  /** @throws Refusal not-found */
  readSlot: (address: SlotAddress) => readSlot(database, address),

  /**
   * A timetable version with the railway and the stock it would run on, as of one moment.
   * @throws Refusal not-found
   */
  readTimetable: ({ club: code, timetable, version }: TimetableAddress): Promise<StoredTimetable> =>
    inTransaction(database, async (transaction) => {
      const club = await reachClub(transaction, code);
      const trains = await readTrains(transaction, club, timetable, version);
      if (trains === undefined)
        throw new Refusal(
          "not-found",
          `Club ${code} has no timetable ${timetable} with a version ${version}.`,
        );
      return { common: await readClubParts(transaction, club), trains, timeZone: club.timeZone };
    }),
});
