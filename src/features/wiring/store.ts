import type { DatabaseClient } from "../../database/client.ts";
import { readSlot, type SlotAddress } from "../../records/read-slot.ts";

export type { SlotAddress };
export type WiringStore = ReturnType<typeof createWiringStore>;

export const createWiringStore = (database: DatabaseClient) => ({
  /** @throws Refusal not-found */
  readSlot: (address: SlotAddress) => readSlot(database, address),
});
