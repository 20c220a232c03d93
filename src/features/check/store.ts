import type { DatabaseClient } from "../../database/client.ts";
import { findClub } from "../../database/records/clubs.ts";
import { type PlanParts, readPlanParts } from "../../database/records/read-plan.ts";
import { inTransaction } from "../../database/transaction.ts";
import { noClub } from "../../http/actor.ts";
import { noSlot } from "./errors.ts";

/** Which stored slot. */
export interface SlotAddress {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

export interface CheckStore {
  /**
   * Everything the slot's check needs, as of one moment.
   * @throws Refusal not-found
   */
  readSlot(address: SlotAddress): Promise<PlanParts>;
}

export function createCheckStore(database: DatabaseClient): CheckStore {
  return {
    readSlot: (address) =>
      inTransaction(database, async (transaction) => {
        const club = await findClub(transaction, address.club);
        if (club === undefined) throw noClub(address.club);
        const parts = await readPlanParts(transaction, club, address.session, address.slot);
        if (parts === undefined) throw noSlot(address);
        return parts;
      }),
  };
}
