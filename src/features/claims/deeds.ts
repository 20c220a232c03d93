import { setTimeout as sleep } from "node:timers/promises";
import type { DatabaseClient } from "../../database/client.ts";
import { sqlstate } from "../../database/errors.ts";
import { onceOnly, type RetryKey } from "../../database/idempotency.ts";
import type { Transaction } from "../../database/transaction.ts";
import type { Membership } from "../../http/actor.ts";
import type { Clock } from "../../lib/clock.ts";
import { Refusal } from "../../lib/refusal.ts";
import { readLive } from "./live.ts";
import type { Notify } from "./notify.ts";
import type { NightSource } from "./source.ts";
import { type NightView, viewNight } from "./view.ts";

export interface ClaimDeps {
  readonly database: DatabaseClient;
  readonly clock: Clock;
  readonly source: NightSource;
  readonly notify: Notify;
}

export interface SlotAddress {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

/** Who asks, where, and with which key where a finger may have pressed twice. */
export interface Asked {
  readonly asker: Membership;
  readonly address: SlotAddress;
  readonly key: RetryKey | undefined;
}

/** Somebody else was quicker: what was looked at is not so any more. */
export class Outrun extends Error {
  override readonly name = "Outrun";
}

// every look that is outrun is a claim that somebody else got, and a night has not so many
const LOOKS = 20;
const LONGEST_PAUSE_MS = 40;
// SQLSTATE class 23, integrity constraint violation
const CONSTRAINT = /^23/;

/** A night in hand: inside a transaction, with a way to see it as it now is. */
export interface NightInHand {
  readonly transaction: Transaction;
  /** As it was before the transaction: good enough to say no by, and for what never changes while a night is open. */
  readonly before: NightView;
  /** As it is at this point. @throws Outrun where its plan is another now */
  look(): Promise<NightView>;
}

/**
 * Runs `work` on a night as one transaction, with a key once only; again where it was outrun. Constraints see to it that
 * nothing gets past: then, too, it looks again, and says what is in the way.
 */
export async function changeNight<T>(
  { database, source }: ClaimDeps,
  { address, key }: Asked,
  work: (night: NightInHand) => Promise<T>,
): Promise<T> {
  for (let look = 1; look <= LOOKS; look++) {
    const before = await source.readView(address);
    try {
      return await onceOnly(database, key, (transaction) => work(inHand(transaction, before)));
    } catch (error) {
      if (!(error instanceof Outrun) && !CONSTRAINT.test(sqlstate(error) ?? "")) throw error;
      await sleep(Math.random() * Math.min(LONGEST_PAUSE_MS, 2 ** look));
    }
  }
  throw new Refusal("conflict", "Others claimed on the same night at the same moment: try again.");
}

function inHand(transaction: Transaction, before: NightView): NightInHand {
  return {
    transaction,
    before,
    look: async () => {
      const live = await readLive(transaction, before.plan.night);
      if (live.sessionVersion !== before.plan.night.version) throw new Outrun();
      return viewNight(before.plan, live);
    },
  };
}

/** From here to the end of the transaction the night's booking stays as it is, and nobody alone can change who has what. */
export async function shareNight({ transaction, before }: NightInHand): Promise<void> {
  await transaction.$queryRaw`select 1 from bookings where session_id = ${before.plan.night.id}::uuid for share`;
}

/** From here to the end of the transaction nobody else claims anything of the night. */
export async function holdNight({ transaction, before }: NightInHand): Promise<void> {
  await transaction.$queryRaw`
    select 1 from bookings where session_id = ${before.plan.night.id}::uuid for no key update`;
}
