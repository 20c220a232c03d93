import type { DatabaseClient } from "../../database/client.ts";
import { type PlanParts, readPlanParts } from "../../database/records/read-plan.ts";
import { inTransaction } from "../../database/transaction.ts";
import { reachClub } from "../../records/reach-club.ts";
import { noSlotHere } from "./errors.ts";

export interface SlotAddress {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

export type SelectorStore = ReturnType<typeof createSelectorStore>;

export function createSelectorStore(database: DatabaseClient) {
  return {
    /** What the clock on the club's wall goes by. */
    readTimeZone: async (club: string): Promise<string> =>
      (await database.club.findUniqueOrThrow({ where: { code: club }, select: { timeZone: true } })).timeZone,

    /**
     * Everything the slot's schedule needs, as of one moment.
     * @throws Refusal not-found
     */
    readSlot: ({ club, session, slot }: SlotAddress): Promise<PlanParts> =>
      inTransaction(database, async (transaction) => {
        const parts = await readPlanParts(transaction, await reachClub(transaction, club), session, slot);
        if (parts === undefined) throw noSlotHere(session, slot);
        return parts;
      }),
  };
}
