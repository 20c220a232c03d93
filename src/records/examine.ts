import type { Database } from "../database/client.ts";
import { countRecords, readRecord } from "../database/records/read-records.ts";
import type { Scope, Stored } from "../database/records/record-table.ts";
import { findUsers, type UsedKind } from "../database/records/usage.ts";
import { Refusal } from "../lib/refusal.ts";
import { capitalise, toWords } from "../lib/words.ts";
import { findUnstorableText, refuseFlaws, toFaults } from "./flaws.ts";
import type { Coded, RecordKind } from "./record-kind.ts";
import { findMissing } from "./references.ts";

/**
 * Everything that can be told before a record is written.
 * @param own the record as it is stored, where this is a change of one
 * @throws Refusal that lists all flaws of the first sort that has any
 */
export async function assertStorable<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
  body: Body,
  own?: Stored<Body>,
): Promise<void> {
  refuseFlaws("validation-failed", findUnstorableText(body));
  if (body.code !== own?.body.code) await assertCodeFree(database, kind, scope, body.code);
  if (own === undefined) await assertRoom(database, kind, scope);
  refuseFlaws("unprocessable", [
    ...(kind.flaws?.(body, scope.club) ?? []),
    ...(await findMissing(database, scope.club.id, kind.references?.(body) ?? [])),
  ]);
  refuseFlaws("unprocessable", (await kind.inspect?.(database, scope, body)) ?? []);
  await assertNoClash(database, kind, scope, body, own?.id);
  if (own) await assertPartsFree(database, kind, scope, own.body, body);
}

/** @throws Refusal in-use that names who refers to the record or a part of it */
export async function assertUnused<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
  body: Body,
): Promise<void> {
  const name = `${capitalise(toWords(kind.one))} ${body.code}`;
  if (kind.used) await refuseUsers(database, scope, kind.used, [body.code], name);
  const owned = kind.owned?.(body);
  if (owned) await refuseUsers(database, scope, owned.kind, owned.codes, name);
}

async function assertCodeFree<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
  code: string,
): Promise<void> {
  if ((await readRecord(database, kind.table, scope, code)) === undefined) return;
  const detail = `${capitalise(toWords(kind.one))} ${code} is there already.`;
  throw new Refusal(
    "duplicate-code",
    detail,
    toFaults([{ path: ["code"], detail: `${detail} Choose another code.` }]),
  );
}

async function assertRoom<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
): Promise<void> {
  if ((await countRecords(database, kind.table, scope)) < kind.most) return;
  throw new Refusal("conflict", roomSentence(kind));
}

export const roomSentence = (kind: Pick<RecordKind, "many" | "most">) =>
  `There are ${kind.most} ${toWords(kind.many)} already, the most there can be: remove one first.`;

async function assertNoClash<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
  body: Body,
  ownId: string | undefined,
): Promise<void> {
  if (!kind.clashes || !kind.rivals) return;
  const rivals = (await kind.rivals(database, scope, body)).filter(({ id }) => id !== ownId);
  // last, so that it is the one said to be at fault
  const together = [...rivals.map((rival) => rival.body), body];
  const clashes = kind.clashes(together, scope.club).filter(({ record }) => record === rivals.length);
  refuseFlaws("conflict", clashes);
}

/** A part that goes must not be one that others refer to. */
async function assertPartsFree<Body extends Coded>(
  database: Database,
  kind: RecordKind<Body, never>,
  scope: Scope,
  before: Body,
  after: Body,
): Promise<void> {
  const owned = kind.owned?.(before);
  if (!owned) return;
  const kept = new Set(kind.owned?.(after).codes);
  const gone = kind.lost?.(before, after) ?? owned.codes.filter((code) => !kept.has(code));
  if (gone.length > 0)
    await refuseUsers(
      database,
      scope,
      owned.kind,
      gone,
      `${capitalise(toWords(owned.kind))} ${gone.join(", ")}`,
    );
}

async function refuseUsers(
  database: Database,
  scope: Scope,
  kind: UsedKind,
  codes: readonly string[],
  name: string,
): Promise<void> {
  const users = await findUsers(database, scope.club.id, kind, codes);
  if (users.length > 0) throw new Refusal("in-use", `${name} is used by ${users.join(", ")}.`);
}
