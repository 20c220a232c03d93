import { Refusal } from "./refusal.ts";

/** What a change demands of the record's version before it happens: one of these, or merely that the record exists. */
export type Precondition = { readonly versions: readonly number[] } | { readonly exists: true };

/**
 * Call it in the transaction that makes the change, with the version read there.
 * @throws Refusal version-mismatch
 */
export function assertCurrent(precondition: Precondition, version: number): void {
  if ("exists" in precondition || precondition.versions.includes(version)) return;
  throw new Refusal(
    "version-mismatch",
    `The record is now at version ${version}, which If-Match does not name.`,
  );
}
