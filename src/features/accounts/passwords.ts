import { hash, verify } from "@node-rs/argon2";

/** What one hash costs: memory in KiB, passes, lanes. */
export interface PasswordCost {
  readonly memoryCost: number;
  readonly timeCost: number;
  readonly parallelism: number;
}

/** OWASP Password Storage Cheat Sheet: argon2id with 19 MiB, two passes, one lane. */
export const PASSWORD_COST: PasswordCost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export type Passwords = ReturnType<typeof createPasswords>;

/** Hashes passwords with argon2id (RFC 9106) and compares them. */
export function createPasswords(cost: PasswordCost) {
  // argon2id is the library's default
  const toHash = (password: string) => hash(plain(password), { ...cost });
  // made once, when first asked for
  let nobodys: Promise<string> | undefined;
  return {
    hash: toHash,
    /** Takes the same time where there is nothing to compare with: how long it took tells nobody whether there was. */
    async matches(stored: string | null | undefined, password: string): Promise<boolean> {
      nobodys ??= toHash("a password that nobody has");
      const isSame = await verify(stored ?? (await nobodys), plain(password));
      return isSame && typeof stored === "string";
    },
  };
}

/** Keyboards write the same letter in more ways than one (NIST SP 800-63B section 5.1.1.2). */
const plain = (password: string) => password.normalize("NFKC");
