import type { DatabaseClient } from "../database/client.ts";
import { type PlanParts, readPlanParts } from "../database/records/read-plan.ts";
import { inTransaction, type Transaction } from "../database/transaction.ts";
import { Refusal } from "../lib/refusal.ts";
import { reachClub } from "./reach-club.ts";

/** Which stored slot. */
export interface SlotAddress {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

/**
 * Everything that is computed from a slot, as of one moment.
 * @throws Refusal not-found
 */
export const readSlot = (database: DatabaseClient, address: SlotAddress): Promise<PlanParts> =>
  inTransaction(database, (transaction) => readSlotIn(transaction, address));

/**
 * As `readSlot`, for what reads more as of the same moment.
 * @throws Refusal not-found
 */
export async function readSlotIn(
  transaction: Transaction,
  { club, session, slot }: SlotAddress,
): Promise<PlanParts> {
  const parts = await readPlanParts(transaction, await reachClub(transaction, club), session, slot);
  if (parts === undefined)
    throw new Refusal("not-found", `Club ${club} has no session ${session} with a slot ${slot}.`);
  return parts;
}
