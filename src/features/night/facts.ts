import type { BookingState } from "../../../shared/booking.ts";
import { type BookedNight, readBooking } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import type * as rows from "../../database/generated/client.ts";
import { type Crew, readCrew } from "./crew-store.ts";
import type { NightDeps } from "./deps.ts";
import {
  type NightLog,
  type Road,
  type RosterLocomotive,
  readHandsets,
  readLocomotives,
  readLog,
  readMembers,
  readRoads,
  readSlots,
  readTrains,
  type TimetableTrain,
} from "./store.ts";

/** Everything that is known of a night at an instant, as it was read. */
export interface NightFacts {
  readonly session: BookedNight;
  readonly now: Date;
  readonly booking: BookingState;
  readonly slots: readonly rows.Slot[];
  readonly trains: readonly TimetableTrain[];
  readonly roads: ReadonlyMap<string, Road>;
  /** Those of the timetable, and those that stand in. */
  readonly locomotives: ReadonlyMap<string, RosterLocomotive>;
  readonly handsets: readonly rows.Handset[];
  readonly members: ReadonlyMap<string, { readonly name: string; readonly junior: boolean }>;
  readonly crew: Crew;
  readonly log: NightLog;
}

/** Reads a night, one query a table whatever the number of trains, one after the other: see `readRecords`. */
export async function readFacts(
  database: Database,
  { clock }: Pick<NightDeps, "clock">,
  session: BookedNight,
): Promise<NightFacts> {
  const booking = await readBooking(database, session.id);
  const slots = await readSlots(database, session);
  const trains = await readTrains(database, session, slots);
  const log = await readLog(database, session);
  const crew = await readCrew(database, session.id);
  const locomotives = await readLocomotives(database, session, [
    ...trains.flatMap((train) => train.locomotives),
    ...log.replacements.flatMap(({ replacementCode }) => replacementCode ?? []),
  ]);
  return {
    session,
    now: clock.now(),
    booking: booking.state,
    slots,
    trains,
    roads: await readRoads(
      database,
      session,
      trains.flatMap(({ fromSection, toSection }) => [fromSection, toSection]),
    ),
    locomotives: new Map(locomotives.map((locomotive) => [locomotive.code, locomotive])),
    handsets: await readHandsets(database, session),
    members: await readMembers(database, session, [
      ...crew.expected,
      ...crew.drivers.map(({ member }) => member),
      ...log.attendances.map(({ memberCode }) => memberCode),
      ...log.handsets.flatMap(({ memberCode }) => memberCode ?? []),
    ]),
    crew,
    log,
  };
}

/** As people are named on the board; one that is not in the list of members any more by the code. */
export const toPerson = ({ members }: Pick<NightFacts, "members">, member: string) => ({
  member,
  name: members.get(member)?.name ?? member,
});
