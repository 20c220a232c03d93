import type { Database } from "../database/client.ts";
import { type ReferredKind, readKnownCodes } from "../database/records/known-codes.ts";
import { toWords } from "../lib/words.ts";
import type { Flaw } from "./flaws.ts";
import type { Reference } from "./record-kind.ts";

const NAMED_AT_MOST = 6;

/** The references to what the club does not have, each with what to do about it. */
export async function findMissing(
  database: Database,
  clubId: string,
  references: readonly Reference[],
): Promise<Flaw[]> {
  const flaws: Flaw[] = [];
  for (const [kind, named] of groupByKind(references)) {
    const codes = [...new Set(named.map(({ code }) => code))];
    const known = await readKnownCodes(database, clubId, kind, codes);
    const missing = named.filter(({ code }) => !known.has(code));
    if (missing.length === 0) continue;
    const all = await readKnownCodes(database, clubId, kind);
    flaws.push(...missing.map(({ code, path }) => ({ path, detail: missingSentence(kind, code, all) })));
  }
  return flaws;
}

/** `No section L9: make it first, or name one of L1, L2.` Those spelt most alike are named first. */
export function missingSentence(kind: ReferredKind, code: string, known: ReadonlySet<string>): string {
  const noun = toWords(kind);
  if (known.size === 0) return `No ${noun} ${code}, nor any other: make it first.`;
  const alike = [...known].sort((a, b) => sharedStart(b, code) - sharedStart(a, code) || (a < b ? -1 : 1));
  const rest = known.size > NAMED_AT_MOST ? " …" : "";
  return `No ${noun} ${code}: make it first, or name one of ${alike.slice(0, NAMED_AT_MOST).join(", ")}${rest}.`;
}

function sharedStart(a: string, b: string): number {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length++;
  return length;
}

export function groupByKind<R extends Reference>(references: readonly R[]): Map<ReferredKind, R[]> {
  const groups = new Map<ReferredKind, R[]>();
  for (const reference of references) {
    const group = groups.get(reference.to);
    if (group) group.push(reference);
    else groups.set(reference.to, [reference]);
  }
  return groups;
}
