import { inTransaction } from "../../database/transaction.ts";
import type { AccountDeps } from "./deps.ts";
import { wrongSignIn } from "./errors.ts";
import { createGuesses } from "./guesses.ts";
import type { Passwords } from "./passwords.ts";
import { endSignIn, type NewSignIn, startSignIn } from "./sign-ins.ts";

export type SignInService = ReturnType<typeof createSignInService>;

interface Credentials {
  readonly email: string;
  readonly password: string;
}

export function createSignInService({ database, clock, demoSignIns }: AccountDeps, passwords: Passwords) {
  const guesses = createGuesses(database);
  return {
    /**
     * Says no in the same way and after the same work whether it was the address or the password.
     * @throws Refusal wrong-sign-in, too-many-attempts
     */
    async signIn(
      { email, password }: Credentials,
      address: string,
      before: string | undefined,
    ): Promise<NewSignIn> {
      const now = clock.now();
      await guesses.begin({ email, address }, now);
      const person = await database.person.findUnique({ where: { email } });
      const isRight = await passwords.matches(person?.passwordHash, password);
      if (!person || !isRight || (person.demo && demoSignIns === undefined)) throw wrongSignIn();
      await guesses.forgive({ email, address }, now);
      return inTransaction(
        database,
        async (transaction) => {
          if (before) await endSignIn(transaction, before);
          return startSignIn(transaction, person.id, now);
        },
        "ReadCommitted",
      );
    },
    async signOut(token: string | undefined): Promise<void> {
      if (token)
        await inTransaction(database, (transaction) => endSignIn(transaction, token), "ReadCommitted");
    },
  };
}
