import type { DatabaseClient } from "../../database/client.ts";
import { readSlot, type SlotAddress } from "../../records/read-slot.ts";

export type CostingStore = ReturnType<typeof createCostingStore>;

export const createCostingStore = (database: DatabaseClient) => ({
  /** @throws Refusal not-found */
  readSlot: (address: SlotAddress) => readSlot(database, address),
});
