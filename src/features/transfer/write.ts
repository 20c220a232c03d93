import type { ImportCount } from "../../../shared/transfer.ts";
import { settle, takeOutParts, writeRecords } from "../../database/records/write-records.ts";
import type { Transaction } from "../../database/transaction.ts";
import { type Batch, type Sorted, sortBatch } from "./batch.ts";
import { allBatches, type Brought } from "./examine.ts";
import type { VersionBatch } from "./timetable-batches.ts";

interface Work {
  readonly batch: Batch;
  readonly sorted: Sorted;
}

/**
 * Writes what is new or different. Parts of all that changes are taken out first, so that nothing is held any more by
 * what will let go of it; then each kind follows those it refers to.
 */
export async function writeImport(
  transaction: Transaction,
  clubId: string,
  brought: Brought,
): Promise<ImportCount[]> {
  const { versions } = brought;
  const works = allBatches(brought).map((batch) => ({ batch, sorted: sortBatch(batch) }));
  const worksOf = (batches: readonly Batch[]) => works.filter(({ batch }) => batches.includes(batch));
  for (const work of works) await takeOut(transaction, work);
  for (const work of worksOf([...brought.records, ...brought.timetables])) await write(transaction, work);
  await insertVersions(transaction, clubId, versions);
  for (const work of worksOf(versions.map(({ trains }) => trains))) await write(transaction, work);
  await updateVersions(transaction, versions);
  for (const work of worksOf(brought.sessions)) await write(transaction, work);
  await settle(transaction);
  return [...countRecords(works), ...countVersions(versions)];
}

function takeOut(transaction: Transaction, { batch, sorted }: Work): Promise<void> {
  const ids = sorted.changed.map(({ id }) => id);
  return takeOutParts(transaction, batch.kind.table, ids);
}

const write = (transaction: Transaction, { batch: { kind, scope }, sorted }: Work): Promise<void> =>
  writeRecords(transaction, kind.table, scope, sorted);

/** A new version takes its trains as a draft, whatever it becomes afterwards. */
async function insertVersions(
  transaction: Transaction,
  clubId: string,
  versions: readonly VersionBatch[],
): Promise<void> {
  const data = versions
    .filter(({ stored }) => stored === undefined)
    .map(({ id, timetable, body: { number, note } }) => ({
      id,
      clubId,
      timetableCode: timetable,
      number,
      state: "draft",
      note,
    }));
  if (data.length > 0) await transaction.timetableVersion.createMany({ data });
}

async function updateVersions(transaction: Transaction, versions: readonly VersionBatch[]): Promise<void> {
  for (const version of versions) {
    const { id, stored, body } = version;
    const becomesIssued = stored === undefined && body.state === "issued";
    if (becomesIssued || (stored && isChanged(version)))
      await transaction.timetableVersion.update({
        where: { id },
        data: { state: body.state, note: body.note },
      });
  }
}

const isChanged = ({ stored, body }: VersionBatch) =>
  stored !== undefined && (stored.state !== body.state || stored.note !== body.note);

/** One entry a kind, in the order in which they come. */
function countRecords(works: readonly Work[]): ImportCount[] {
  const counts = new Map<string, ImportCount>();
  for (const { batch, sorted } of works) {
    const kind = batch.kind.many;
    const { made, changed, unchanged } = counts.get(kind) ?? { made: 0, changed: 0, unchanged: 0 };
    counts.set(kind, {
      kind,
      made: made + sorted.made.length,
      changed: changed + sorted.changed.length,
      unchanged: unchanged + sorted.unchanged,
    });
  }
  return [...counts.values()];
}

function countVersions(versions: readonly VersionBatch[]): ImportCount[] {
  if (versions.length === 0) return [];
  const made = versions.filter(({ stored }) => stored === undefined).length;
  const changed = versions.filter(isChanged).length;
  return [{ kind: "timetableVersions", made, changed, unchanged: versions.length - made - changed }];
}
