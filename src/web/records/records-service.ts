import type { EffectsAnswer } from "../../../shared/what-if.ts";
import { type Answer, change, read } from "../api/ask.ts";
import { asProblem } from "../api/problem.ts";
import { clubPath } from "../api/service.ts";
import { readAll } from "../nights/night-records.ts";
import type { Field, Named, RecordDraft, TableKind } from "./fields.ts";

/** A record as the service keeps it. */
export type KeptRecord = RecordDraft & { readonly code: string; readonly version: number };

/** Codes and names of records that fields name, by kind. */
export type Names = Readonly<Partial<Record<Named, ReadonlyMap<string, string>>>>;

const pathOf = (club: string, { path }: Pick<TableKind, "path">) => `${clubPath(club)}/${path}`;
const recordPath = (club: string, kind: Pick<TableKind, "path">, code: string) =>
  `${pathOf(club, kind)}/${encodeURIComponent(code)}`;

export const listRecords = (club: string, kind: Pick<TableKind, "path">, signal: AbortSignal) =>
  readAll<KeptRecord>(pathOf(club, kind), signal);

/** A record as it is now, null where it is gone. */
export async function readRecord(
  club: string,
  kind: Pick<TableKind, "path">,
  code: string,
): Promise<KeptRecord | null> {
  try {
    return await read<KeptRecord>(recordPath(club, kind, code), new AbortController().signal);
  } catch (error) {
    if (asProblem(error).status === 404) return null;
    throw error;
  }
}

/** What the fields of a table may name. */
export async function readNames(club: string, fields: readonly Field[], signal: AbortSignal): Promise<Names> {
  const wanted = new Set(
    fields.flatMap((field) => (field.holds === "one" || field.holds === "many" ? [field.of] : [])),
  );
  const pairs = await Promise.all(
    [...wanted].map(async (of) => [of, await readNamesOf(club, of, signal)] as const),
  );
  return Object.fromEntries(pairs);
}

async function readNamesOf(club: string, of: Named, signal: AbortSignal): Promise<Map<string, string>> {
  if (of !== "outputs") {
    const records = await listRecords(club, { path: of }, signal);
    return new Map(records.map((record) => [record.code, String(record.name ?? record.code)]));
  }
  const controllers = await listRecords(club, { path: "controllers" }, signal);
  return new Map(
    controllers.flatMap(({ outputs }) =>
      (outputs as readonly { code: string; name: string }[]).map(({ code, name }) => [code, name] as const),
    ),
  );
}

/** Body of a record without what the service adds to it. */
export function bodyOf(record: KeptRecord): RecordDraft {
  const { version: _, updatedAt: __, ...body } = record;
  return body;
}

/** Makes a record, or changes the one kept under `before`. */
export async function saveRecord(
  club: string,
  kind: TableKind,
  record: RecordDraft,
  before: KeptRecord | null,
): Promise<KeptRecord> {
  const answer: Answer<KeptRecord> =
    before === null
      ? await change("POST", pathOf(club, kind), { body: record })
      : await change("PUT", recordPath(club, kind, before.code), {
          body: record,
          etag: `"${before.version}"`,
        });
  return answer.value;
}

export const removeRecord = (club: string, kind: TableKind, { code, version }: KeptRecord) =>
  change("DELETE", recordPath(club, kind, code), { etag: `"${version}"` });

/** What a changed record would do to the nights to come. */
export async function tellEffects(
  club: string,
  { part, many }: TableKind,
  record: RecordDraft,
  signal: AbortSignal,
): Promise<EffectsAnswer> {
  const changes = part === null ? { [many]: [record] } : { [part]: { [many]: [record] } };
  return (await change<EffectsAnswer>("POST", `${clubPath(club)}/effects`, { body: { changes }, signal }))
    .value;
}
