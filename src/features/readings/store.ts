import type { AcceptedCorrections } from "../../../shared/estimates.ts";
import type { Reading } from "../../../shared/readings.ts";
import type { Locomotive } from "../../../shared/roster.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import { readBodies } from "../../database/records/read-records.ts";
import { readingTable } from "../../database/records/readings.ts";
import { clubScope } from "../../database/records/record-table.ts";
import { locomotiveTable } from "../../database/records/roster.ts";
import { inTransaction } from "../../database/transaction.ts";
import { reachClub } from "../../records/reach-club.ts";
import { readSlotIn, type SlotAddress } from "../../records/read-slot.ts";
import { changedMeanwhile } from "./errors.ts";
import type { SlotLog } from "./replaced.ts";

export type { SlotAddress };
export interface Compared {
  readonly parts: PlanParts;
  readonly log: SlotLog;
  readonly versions: ReadonlyMap<string, number>;
}

export type ReadingStore = ReturnType<typeof createReadingStore>;

export function createReadingStore(database: DatabaseClient) {
  return {
    /**
     * A slot with all that its check needs, what was done in its night that changes who draws in it, and the version of
     * every locomotive, as of one moment.
     * @throws Refusal not-found
     */
    readCompared: (address: SlotAddress): Promise<Compared> =>
      inTransaction(database, async (transaction) => {
        const { id } = await reachClub(transaction, address.club);
        const parts = await readSlotIn(transaction, address);
        const where = { clubId: id, slotCode: address.slot, session: { code: address.session } };
        const log = {
          replacements: await transaction.nightReplacement.findMany({
            where,
            orderBy: [{ at: "asc" }, { id: "asc" }],
          }),
          clock: await transaction.nightClockChange.findMany({ where, orderBy: { position: "asc" } }),
        };
        const rows = await transaction.locomotive.findMany({
          where: { clubId: id },
          select: { code: true, version: true },
        });
        return { parts, log, versions: new Map(rows.map(({ code, version }) => [code, version])) };
      }),

    /** @throws Refusal not-found */
    readRoster: (club: string): Promise<{ locomotives: Locomotive[]; readings: Reading[] }> =>
      inTransaction(database, async (transaction) => {
        const scope = clubScope(await reachClub(transaction, club));
        return {
          locomotives: await readBodies(transaction, locomotiveTable, scope),
          readings: await readBodies(transaction, readingTable, scope),
        };
      }),

    /**
     * Writes all, or none where a locomotive is not what it was any more.
     * @throws Refusal not-found, version-mismatch
     */
    accept: (club: string, { corrections }: AcceptedCorrections): Promise<void> =>
      inTransaction(database, async (transaction) => {
        const { id } = await reachClub(transaction, club);
        for (const [code, group] of groupByLocomotive(corrections)) {
          const version = group[0]?.version ?? 0;
          const data = Object.assign({}, ...group.map(toColumns));
          const { count } = await transaction.locomotive.updateMany({
            where: { clubId: id, code, version },
            data,
          });
          if (count === 0) throw changedMeanwhile(code);
        }
      }),
  };
}

type Accepted = AcceptedCorrections["corrections"];

function groupByLocomotive(corrections: Accepted): Map<string, Accepted> {
  const groups = new Map<string, Accepted>();
  for (const one of corrections) groups.set(one.locomotive, [...(groups.get(one.locomotive) ?? []), one]);
  return groups;
}

const toColumns = ({ state, ma }: Accepted[number]) =>
  state === "running"
    ? { runningMa: ma, runningSource: "measured" }
    : { standingMa: ma, standingSource: "measured" };
