import type { ClubDocument } from "../../../shared/documents.ts";
import type { Database } from "../../database/client.ts";
import { type ReferredKind, readKnownCodes, versionCode } from "../../database/records/known-codes.ts";
import type { Batch } from "./batch.ts";

/** The codes that can be referred to once the document is in: those stored and those it brings. */
export type Known = (kind: ReferredKind) => Promise<ReadonlySet<string>>;

export function createKnown(
  database: Database,
  clubId: string,
  document: ClubDocument,
  batches: readonly Batch[],
): Known {
  const read = new Map<ReferredKind, ReadonlySet<string>>();
  return async (kind) => {
    const ready = read.get(kind);
    if (ready) return ready;
    const codes = await readKnownCodes(database, clubId, kind);
    for (const batch of batches) addBrought(codes, kind, batch);
    if (kind === "timetableVersion")
      for (const { code, versions } of document.timetables ?? [])
        for (const { number } of versions) codes.add(versionCode(code, number));
    read.set(kind, codes);
    return codes;
  };
}

function addBrought(
  codes: Set<string>,
  kind: ReferredKind,
  { kind: brought, bodies, storedByCode }: Batch,
): void {
  if (brought.one === kind) for (const { code } of bodies) codes.add(code);
  // parts of a record that the document brings anew are those it brings, and no others
  for (const body of bodies) {
    const stored = storedByCode.get(body.code)?.body;
    const owned = stored && brought.owned?.(stored);
    if (owned?.kind === kind) for (const code of owned.codes) codes.delete(code);
  }
  for (const body of bodies) {
    const owned = brought.owned?.(body);
    if (owned?.kind === kind) for (const code of owned.codes) codes.add(code);
  }
}
