import type { Transaction } from "../../database/transaction.ts";

/** What a member should hear of, though they did nothing themselves. */
export interface ClaimNews {
  readonly kind: "got-from-queue" | "assigned" | "taken-off" | "swap-offered" | "swapped";
  readonly clubId: string;
  readonly club: string;
  readonly session: string;
  readonly slot: string;
  /** Of the train or duty. */
  readonly job: { readonly kind: "train" | "duty"; readonly code: string; readonly name: string };
  readonly claimId: string;
  readonly member: string;
}

/** Told inside the transaction of the deed: what comes of it stands or falls with that. */
export type Notify = (transaction: Transaction, news: ClaimNews) => Promise<void>;
