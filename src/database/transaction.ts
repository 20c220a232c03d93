import { setTimeout as sleep } from "node:timers/promises";
import type { DatabaseClient } from "./client.ts";
import { isWriteConflict } from "./errors.ts";
import type { Prisma } from "./generated/client.ts";

export type Transaction = Prisma.TransactionClient;

const ATTEMPTS = 10;
const FIRST_PAUSE_MS = 5;
const LONGEST_PAUSE_MS = 250;
// an import of a whole timetable is the longest unit of work
const WORK_LIMIT_MS = 30_000;
const CONNECTION_LIMIT_MS = 5_000;

/** Read committed is for work that constraints, locks and versions guard by themselves: it then never loses by chance. */
export type Isolation = "Serializable" | "ReadCommitted";

/**
 * Runs `work` as one transaction, Serializable unless told otherwise, so it sees and leaves the database as if it ran
 * alone. It is run again from the start when it lost against another, up to ten times: `work` must do nothing but use
 * the transaction it is given, with stores built anew on it.
 */
export async function inTransaction<T>(
  database: DatabaseClient,
  work: (transaction: Transaction) => Promise<T>,
  isolationLevel: Isolation = "Serializable",
): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await database.$transaction(work, {
        isolationLevel,
        timeout: WORK_LIMIT_MS,
        maxWait: CONNECTION_LIMIT_MS,
      });
    } catch (error) {
      if (attempt === ATTEMPTS || !isWriteConflict(error)) throw error;
      // spread over the whole pause, or losers of one round would meet again in the next
      const longest = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** attempt);
      await sleep(Math.random() * longest);
    }
  }
}
