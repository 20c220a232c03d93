import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";
import { hashSecret, makeSecret } from "../../lib/secret.ts";

/** However much it is used, a sign-in ends after so long. */
const LIFE_MS = 30 * 86_400_000;

/** What a browser is given. */
export interface NewSignIn {
  readonly token: string;
  readonly expires: Date;
}

/** Signs a browser in anew: whatever it had before is never taken on. */
export async function startSignIn(transaction: Transaction, personId: string, now: Date): Promise<NewSignIn> {
  const token = makeSecret();
  const expires = new Date(now.getTime() + LIFE_MS);
  await transaction.signIn.deleteMany({ where: { personId, expiresAt: { lte: now } } });
  await transaction.signIn.create({
    data: {
      id: newId(now.getTime()),
      personId,
      tokenHash: hashSecret(token),
      createdAt: now,
      lastSeenAt: now,
      expiresAt: expires,
    },
  });
  return { token, expires };
}

/** Ends the sign-in that a cookie stands for, whoever holds it. */
export async function endSignIn(transaction: Transaction, token: string): Promise<void> {
  await transaction.signIn.deleteMany({ where: { tokenHash: hashSecret(token) } });
}
