import { passwordFault } from "./common-passwords.ts";
import { faultAt } from "./errors.ts";
import type { Passwords } from "./passwords.ts";

/**
 * The hash of a password that is being chosen; `known` are words that whoever knows the person would try.
 * @throws Refusal validation-failed for one that is too easy to guess
 */
export async function hashChosen(
  passwords: Passwords,
  password: string,
  known: readonly string[],
): Promise<string> {
  const fault = passwordFault(password, [...known, "foreman", "running foreman"]);
  if (fault !== undefined) throw faultAt("password", fault);
  return passwords.hash(password);
}
