import type { RefusalCode } from "../../shared/errors.ts";
import { Refusal } from "../lib/refusal.ts";
import type { DatabaseClient } from "./client.ts";
import { type Isolation, inTransaction, type Transaction } from "./transaction.ts";

/** What makes a request the same as one before. */
export interface RetryKey {
  /** Whoever sends it: keys of others are no business of theirs. */
  readonly owner: string;
  readonly key: string;
  /** Of method, address and body. */
  readonly fingerprint: string;
}

type Outcome<T> =
  | { readonly done: T }
  | {
      readonly refused: {
        readonly code: RefusalCode;
        readonly detail: string;
        readonly faults: Refusal["faults"];
      };
    };

// a client gives up long before
const KEPT_DAYS = 7;
const CLEARED_AT_ONCE = 5;

/**
 * Runs `work` as one transaction; with a key only the first time, and the same request is answered the same from then on:
 * with what `work` returned, which must survive JSON, or with its refusal. Of two at the same time the second waits for
 * the first. What is no refusal, such as a lost database, is not kept: then the same request may try again.
 * @throws Refusal idempotency-key-reused, where the key came with another request before
 */
export async function onceOnly<T>(
  database: DatabaseClient,
  key: RetryKey | undefined,
  work: (transaction: Transaction) => Promise<T>,
  isolation: Isolation = "ReadCommitted",
): Promise<T> {
  if (key === undefined) return inTransaction(database, work, isolation);
  try {
    return await inTransaction(
      database,
      async (transaction) => {
        const before = await take<T>(transaction, key);
        if (before) return answerAgain(before);
        const done = await work(transaction);
        await keep(transaction, key, { done });
        return done;
      },
      isolation,
    );
  } catch (error) {
    if (!(error instanceof Refusal) || error.code === "idempotency-key-reused") throw error;
    return keepRefusal<T>(database, key, error);
  }
}

/** The outcome there is, or undefined when the key is ours to use: whoever brings it too then waits for us. */
async function take<T>(transaction: Transaction, key: RetryKey): Promise<Outcome<T> | undefined> {
  const { owner, key: name, fingerprint } = key;
  const taken = await transaction.$executeRaw`
    insert into idempotency_keys (owner, key, fingerprint) values (${owner}, ${name}, ${fingerprint})
    on conflict (owner, key) do nothing`;
  if (taken > 0) return undefined;
  const row = await transaction.idempotencyKey.findUniqueOrThrow({
    where: { owner_key: { owner, key: name } },
  });
  if (row.fingerprint !== fingerprint)
    throw new Refusal(
      "idempotency-key-reused",
      `The Idempotency-Key ${name} came with another request before.`,
    );
  return row.outcome as Outcome<T>;
}

async function keep<T>(
  transaction: Transaction,
  { owner, key }: RetryKey,
  outcome: Outcome<T>,
): Promise<void> {
  await transaction.$executeRaw`
    with past as (
      select owner, key from idempotency_keys where created_at < now() - make_interval(days => ${KEPT_DAYS})
      order by created_at limit ${CLEARED_AT_ONCE} for update skip locked
    ), cleared as (
      delete from idempotency_keys k using past p where (k.owner, k.key) = (p.owner, p.key)
    )
    update idempotency_keys set outcome = ${JSON.stringify(outcome)}::jsonb where (owner, key) = (${owner}, ${key})`;
}

/** The same request may have got further in the meantime: then that is the answer. */
async function keepRefusal<T>(database: DatabaseClient, key: RetryKey, refusal: Refusal): Promise<T> {
  const { code, message: detail, faults } = refusal;
  const outcome = await inTransaction(
    database,
    async (transaction) => {
      const before = await take<T>(transaction, key);
      if (before === undefined) await keep(transaction, key, { refused: { code, detail, faults } });
      return before;
    },
    "ReadCommitted",
  );
  if (outcome) return answerAgain(outcome);
  throw refusal;
}

function answerAgain<T>(outcome: Outcome<T>): T {
  if ("done" in outcome) return outcome.done;
  const { code, detail, faults } = outcome.refused;
  throw new Refusal(code, detail, faults);
}
