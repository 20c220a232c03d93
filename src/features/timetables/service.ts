import { LIMITS } from "../../../shared/limits.ts";
import type { NewTimetableVersion, TimetableVersion, Train } from "../../../shared/timetable.ts";
import type { Database, DatabaseClient } from "../../database/client.ts";
import { versionCode } from "../../database/records/known-codes.ts";
import type { Stored } from "../../database/records/record-table.ts";
import { trainScope } from "../../database/records/timetables.ts";
import { findUsers } from "../../database/records/usage.ts";
import { removeRecord } from "../../database/records/write-records.ts";
import { inTransaction } from "../../database/transaction.ts";
import { assertCurrent, type Precondition } from "../../lib/precondition.ts";
import { Refusal } from "../../lib/refusal.ts";
import type { Destination } from "../../records/collection.ts";
import { findUnstorableText, refuseFlaws } from "../../records/flaws.ts";
import { lookAgain } from "../../records/look-again.ts";
import { reachClub } from "../../records/reach-club.ts";
import {
  noNumberLeft,
  noTimetable,
  noVersion,
  noVersionToCopy,
  numberTaken,
  versionIssued,
} from "./errors.ts";
import {
  hasTimetable,
  holdState,
  insertVersion,
  readLastVersion,
  readTrains,
  readVersion,
  readVersions,
  type TimetableAddress,
  updateVersion,
} from "./store.ts";

export type VersionService = ReturnType<typeof createVersionService>;

/** @throws Refusal not-found */
async function reachTimetable(
  database: Database,
  club: string,
  timetable: string,
): Promise<TimetableAddress> {
  const address = { club: await reachClub(database, club), timetable };
  if (await hasTimetable(database, address)) return address;
  throw noTimetable(timetable);
}

/** @throws Refusal not-found */
async function findVersion(database: Database, address: TimetableAddress, number: number) {
  const stored = await readVersion(database, address, number);
  if (stored) return stored;
  throw noVersion(address.timetable, number);
}

/**
 * The trains of a version, as a collection that refuses changes once the version is issued.
 * @throws Refusal not-found
 */
export async function reachTrains(
  database: Database,
  club: string,
  timetable: string,
  number: number,
): Promise<Destination> {
  const address = await reachTimetable(database, club, timetable);
  const { id } = await findVersion(database, address, number);
  return {
    scope: trainScope(address.club, id),
    guard: async (handle) => {
      const state = await holdState(handle, id);
      if (state === undefined) throw noVersion(timetable, number);
      if (state === "issued") throw versionIssued(timetable, number);
    },
  };
}

/** The versions of a timetable. */
export function createVersionService(database: DatabaseClient) {
  const reach = (club: string, timetable: string) => reachTimetable(database, club, timetable);

  return {
    async list(club: string, timetable: string, after: number, limit: number) {
      return readVersions(database, await reach(club, timetable), after, limit);
    },

    async read(club: string, timetable: string, number: number) {
      return findVersion(database, await reach(club, timetable), number);
    },

    create(club: string, timetable: string, body: NewTimetableVersion): Promise<Stored<TimetableVersion>> {
      refuseFlaws("validation-failed", findUnstorableText(body));
      return inTransaction(database, async (transaction) => {
        const address = await reachTimetable(transaction, club, timetable);
        const last = await readLastVersion(transaction, address);
        const number = (last?.body.number ?? 0) + 1;
        if (number > LIMITS.versions) throw noNumberLeft(timetable, LIMITS.versions);
        const source = await findSource(transaction, address, body, last);
        const trains = source ? await readTrains(transaction, address, source) : [];
        return insertVersion(transaction, address, number, body, trains);
      });
    },

    /** A draft with the trains of version `from` as `change` leaves them, without flaws; all or nothing. */
    draftWith(
      club: string,
      timetable: string,
      { from, note }: NewTimetableVersion & { readonly from: number },
      change: (trains: readonly Train[]) => readonly Train[],
    ): Promise<TimetableVersion> {
      refuseFlaws("validation-failed", findUnstorableText({ note }));
      return inTransaction(database, async (transaction) => {
        const address = await reachTimetable(transaction, club, timetable);
        const last = await readLastVersion(transaction, address);
        const number = (last?.body.number ?? 0) + 1;
        if (number > LIMITS.versions) throw noNumberLeft(timetable, LIMITS.versions);
        const source = await findVersion(transaction, address, from);
        const trains = change(await readTrains(transaction, address, source));
        return (await insertVersion(transaction, address, number, { note }, trains)).body;
      });
    },

    replace(
      club: string,
      timetable: string,
      number: number,
      body: TimetableVersion,
      precondition: Precondition,
    ) {
      refuseFlaws("validation-failed", findUnstorableText(body));
      return lookAgain(async () => {
        const address = await reach(club, timetable);
        const stored = await findVersion(database, address, number);
        assertCurrent(precondition, stored.version);
        assertMayBecome(timetable, stored.body, body);
        if (body.number !== number && (await readVersion(database, address, body.number)))
          throw numberTaken(timetable, body.number);
        return inTransaction(
          database,
          (transaction) => updateVersion(transaction, address, stored, body),
          "ReadCommitted",
        );
      });
    },

    remove(club: string, timetable: string, number: number, precondition: Precondition): Promise<true> {
      return lookAgain(async () => {
        const address = await reach(club, timetable);
        const stored = await findVersion(database, address, number);
        assertCurrent(precondition, stored.version);
        await assertUnused(database, address, number);
        const gone = await inTransaction(
          database,
          (transaction) =>
            removeRecord(transaction, { model: "timetableVersion" }, stored.id, stored.version),
          "ReadCommitted",
        );
        return gone || undefined;
      });
    },
  };
}

async function findSource(
  database: Database,
  address: TimetableAddress,
  { from }: NewTimetableVersion,
  last: Stored<TimetableVersion> | undefined,
): Promise<Stored<TimetableVersion> | undefined> {
  if (from === undefined) return last;
  if (from === null) return undefined;
  const source = await readVersion(database, address, from);
  if (source) return source;
  throw noVersionToCopy(address.timetable, from);
}

/** What people hold in their hands keeps its number, and is never a draft again. */
function assertMayBecome(timetable: string, before: TimetableVersion, after: TimetableVersion): void {
  if (before.state === "issued" && (after.state !== "issued" || after.number !== before.number))
    throw versionIssued(timetable, before.number);
}

async function assertUnused(
  database: Database,
  { club, timetable }: TimetableAddress,
  number: number,
): Promise<void> {
  const users = await findUsers(database, club.id, "timetableVersion", [versionCode(timetable, number)]);
  if (users.length > 0)
    throw new Refusal(
      "in-use",
      `Version ${number} of timetable ${timetable} is used by ${users.join(", ")}.`,
    );
}
