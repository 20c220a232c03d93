import type { DatabaseClient } from "../../database/client.ts";
import {
  type ClubParts,
  type PlanParts,
  readClubParts,
  readSlotParts,
} from "../../database/records/read-plan.ts";
import { inTransaction } from "../../database/transaction.ts";
import { reachClub } from "../../records/reach-club.ts";
import { readSlot, type SlotAddress } from "../../records/read-slot.ts";

export type { SlotAddress };

/** A slot to come, with all that its check needs. */
export interface ComingSlot {
  readonly session: string;
  readonly name: string;
  readonly slot: string;
  readonly slotName: string;
  readonly startsAt: Date;
  readonly parts: PlanParts;
}

export interface Coming {
  readonly common: ClubParts;
  readonly slots: readonly ComingSlot[];
  readonly leftOut: number;
}

export type WhatIfStore = ReturnType<typeof createWhatIfStore>;

export function createWhatIfStore(database: DatabaseClient) {
  return {
    /** @throws Refusal not-found */
    readSlot: (address: SlotAddress): Promise<PlanParts> => readSlot(database, address),

    /**
     * The slots that end after `now`, soonest first, `most` at most, as of one moment.
     * @throws Refusal not-found
     */
    readComing: (clubCode: string, now: Date, most: number): Promise<Coming> =>
      inTransaction(database, async (transaction) => {
        const club = await reachClub(transaction, clubCode);
        const common = await readClubParts(transaction, club);
        const found = await transaction.slot.findMany({
          where: { session: { clubId: club.id }, endsAt: { gt: now } },
          orderBy: [{ startsAt: "asc" }, { code: "asc" }],
          select: { code: true, name: true, startsAt: true, session: { select: { code: true, name: true } } },
        });
        const slots: ComingSlot[] = [];
        for (const { code, name, startsAt, session } of found.slice(0, most)) {
          const parts = await readSlotParts(transaction, club, session.code, code, common);
          if (parts)
            slots.push({
              session: session.code,
              name: session.name,
              slot: code,
              slotName: name,
              startsAt,
              parts,
            });
        }
        return { common, slots, leftOut: Math.max(0, found.length - most) };
      }),
  };
}
