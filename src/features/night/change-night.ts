import type { BookingState } from "../../../shared/booking.ts";
import { type BookedNight, findNight, holdNight, readBooking } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import { onceOnly, type RetryKey } from "../../database/idempotency.ts";
import type { Transaction } from "../../database/transaction.ts";
import { lookAgain } from "../../records/look-again.ts";
import { reachClub } from "../../records/reach-club.ts";
import type { NightDeps } from "./deps.ts";
import { noSession, notNow } from "./errors.ts";
import { type NightFacts, readFacts } from "./facts.ts";

export interface NightAddress {
  readonly club: string;
  readonly session: string;
}

/** A change of the night, and the states of its booking in which it may be made. */
interface Deed {
  readonly named: string;
  readonly during: readonly BookingState[];
}

/** Every change of a night, and when it may be made: people come and are handed things before the clock is started. */
export const DEEDS = {
  clock: { named: "the layout clock", during: ["locked", "running"] },
  attendance: { named: "booking on", during: ["locked", "running"] },
  handOut: { named: "handing out a handset", during: ["locked", "running"] },
  // what went out must come back, also when the night is over
  takeIn: { named: "taking in a handset", during: ["locked", "running", "finished"] },
  train: { named: "reporting a train", during: ["running"] },
  replacement: { named: "replacing a locomotive", during: ["locked", "running"] },
  trip: { named: "noting a trip", during: ["running", "finished"] },
} as const satisfies Record<string, Deed>;

/** @throws Refusal not-found */
export async function reachNight(database: Database, { club, session }: NightAddress): Promise<BookedNight> {
  const found = await findNight(database, await reachClub(database, club), session);
  if (found) return found;
  throw noSession(session);
}

/** A night that is being changed: nobody else changes it meanwhile. */
export interface NightInHand {
  readonly transaction: Transaction;
  readonly session: BookedNight;
  readonly booking: BookingState;
  /** The night as it is at this point of the change. */
  read(): Promise<NightFacts>;
}

/** A change that is asked for: of which night, and with which key where a finger may have pressed twice. */
export interface Asked<Address extends NightAddress = NightAddress> {
  readonly address: Address;
  readonly key: RetryKey | undefined;
}

/**
 * Runs `work` on a night in hand, as one; with a key once only. Constraints refuse what must never be, should anything get past that.
 * @throws Refusal not-found, night-not-running
 */
export function changeNight<T>(
  deps: NightDeps,
  { address, key }: Asked,
  deed: Deed,
  work: (night: NightInHand) => Promise<T>,
): Promise<T> {
  return lookAgain(() =>
    onceOnly(deps.database, key, async (transaction) => {
      const session = await reachNight(transaction, address);
      await holdNight(transaction, session);
      const { state } = await readBooking(transaction, session.id);
      if (!deed.during.includes(state)) throw notNow(deed.named, state, deed.during);
      return work({
        transaction,
        session,
        booking: state,
        read: () => readFacts(transaction, deps, session),
      });
    }),
  );
}

/** One of the board's list that is there without doubt. */
export function pick<T>(items: readonly T[], wanted: (item: T) => boolean): T {
  const found = items.find(wanted);
  if (found === undefined) throw new Error("what was just written is not on the board");
  return found;
}
