import type { ClubDocument } from "../../../shared/documents.ts";
import type { Database } from "../../database/client.ts";
import { findUsers } from "../../database/records/usage.ts";
import { toWords } from "../../lib/words.ts";
import { roomSentence } from "../../records/examine.ts";
import { type Flaw, findRepeated } from "../../records/flaws.ts";
import { missingSentence } from "../../records/references.ts";
import { type Batch, sortBatch } from "./batch.ts";
import { changesIssued, comesTwice, partInUse, reopensIssued, versionTwice } from "./errors.ts";
import { createKnown, type Known } from "./known.ts";
import type { TimetableBatches, VersionBatch } from "./timetable-batches.ts";

/** Everything that a document brings, beside what is stored, as of one moment. */
export interface Brought extends TimetableBatches {
  readonly document: ClubDocument;
  /** All that timetables refer to, and what they have nothing to do with. */
  readonly records: readonly Batch[];
  readonly sessions: readonly Batch[];
}

/** Every list of records, each after those that it refers to. */
export const allBatches = ({ records, timetables, versions, sessions }: Brought): readonly Batch[] => [
  ...records,
  ...timetables,
  ...versions.map(({ trains }) => trains),
  ...sessions,
];

/** Every reason not to store the document, in its own order as far as can be told. */
export async function examineImport(database: Database, clubId: string, brought: Brought): Promise<Flaw[]> {
  const batches = allBatches(brought);
  const known = createKnown(database, clubId, brought.document, batches);
  const flaws: Flaw[] = [];
  const whole: Batch[] = [];
  for (const batch of batches) {
    const found = [...findFlaws(batch), ...(await findUnknown(batch, known))];
    flaws.push(...found);
    if (found.length === 0) whole.push(batch);
  }
  for (const batch of whole) flaws.push(...findCrowding(batch));
  flaws.push(...(await findPartsInUse(database, clubId, batches)));
  flaws.push(...findVersionFlaws(brought.versions, new Set(whole)));
  return flaws;
}

/** What is wrong with each record by itself, and with its code beside the others'. */
function findFlaws({ kind, at, bodies, scope }: Batch): Flaw[] {
  const repeated = findRepeated(bodies.map(({ code }) => code));
  return [
    ...repeated.map(({ at: i, entry }) => ({
      path: [...at, i, "code"],
      detail: comesTwice(toWords(kind.one), entry),
    })),
    ...bodies.flatMap((body, i) =>
      (kind.flaws?.(body, scope.club) ?? []).map(({ path, detail }) => ({
        path: [...at, i, ...path],
        detail,
      })),
    ),
  ];
}

async function findUnknown({ kind, at, bodies }: Batch, known: Known): Promise<Flaw[]> {
  const flaws: Flaw[] = [];
  for (const [i, body] of bodies.entries())
    for (const { to, code, path } of kind.references?.(body) ?? []) {
      const codes = await known(to);
      if (!codes.has(code))
        flaws.push({ path: [...at, i, ...path], detail: missingSentence(to, code, codes) });
    }
  return flaws;
}

/** What is wrong with the records together, those that stay as they are included. */
function findCrowding(batch: Batch): Flaw[] {
  const { kind, at, bodies, stored, scope } = batch;
  const brought = new Set(bodies.map(({ code }) => code));
  const others = stored.filter(({ body }) => !brought.has(body.code)).map(({ body }) => body);
  const flaws: Flaw[] = [];
  if (bodies.length + others.length > kind.most) flaws.push({ path: at, detail: roomSentence(kind) });
  for (const { record, path, detail } of kind.clashes?.([...bodies, ...others], scope.club) ?? [])
    if (record < bodies.length) flaws.push({ path: [...at, record, ...path], detail });
  return flaws;
}

/** Parts that the document no longer brings, while stored records that it does not bring refer to them. */
async function findPartsInUse(
  database: Database,
  clubId: string,
  batches: readonly Batch[],
): Promise<Flaw[]> {
  const brought = new Set(
    batches.flatMap(({ kind, bodies }) => bodies.map(({ code }) => `${toWords(kind.one)} ${code}`)),
  );
  const flaws: Flaw[] = [];
  for (const { kind, at, bodies, storedByCode } of batches) {
    if (!kind.owned) continue;
    const kept = new Set(bodies.flatMap((body) => kind.owned?.(body).codes ?? []));
    for (const [i, body] of bodies.entries()) {
      const stored = storedByCode.get(body.code)?.body;
      const owned = stored && kind.owned(stored);
      const gone = owned?.codes.filter((code) => !kept.has(code)) ?? [];
      if (!owned || gone.length === 0) continue;
      const users = (await findUsers(database, clubId, owned.kind, gone)).filter(
        (user) => !brought.has(user),
      );
      if (users.length > 0)
        flaws.push({ path: [...at, i], detail: partInUse(toWords(owned.kind), gone, users) });
    }
  }
  return flaws;
}

function findVersionFlaws(versions: readonly VersionBatch[], whole: ReadonlySet<Batch>): Flaw[] {
  const repeated = findRepeated(versions.map(({ timetable, body }) => `${timetable} ${body.number}`));
  const twice = repeated.flatMap(({ at }) => {
    const version = versions[at];
    return version ? [{ path: [...version.at, "number"], detail: versionTwice(version.body.number) }] : [];
  });
  return [...twice, ...versions.flatMap((version) => findIssuedChanges(version, whole))];
}

function findIssuedChanges(version: VersionBatch, whole: ReadonlySet<Batch>): Flaw[] {
  const { stored, body, timetable, at, trains } = version;
  if (stored?.state !== "issued") return [];
  const flaws: Flaw[] = [];
  if (body.state !== "issued")
    flaws.push({ path: [...at, "state"], detail: reopensIssued(timetable, body.number) });
  if (!whole.has(trains)) return flaws;
  const { made, changed } = sortBatch(trains);
  const touched = new Set([...made, ...changed.map(({ body: train }) => train)]);
  trains.bodies.forEach((train, i) => {
    if (touched.has(train))
      flaws.push({ path: [...trains.at, i], detail: changesIssued(timetable, body.number, train.code) });
  });
  return flaws;
}
