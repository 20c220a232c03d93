import { z } from "zod";
import { LIMITS } from "../../../shared/limits.ts";
import { type Session, session } from "../../../shared/sessions.ts";
import type { Database } from "../../database/client.ts";
import { slotCode, versionCode } from "../../database/records/known-codes.ts";
import { readRecords } from "../../database/records/read-records.ts";
import type { Scope } from "../../database/records/record-table.ts";
import { renamedSlots, sessionTable } from "../../database/records/sessions.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { findOverlaps, findSessionFlaws } from "./slot-flaws.ts";

const instant = z.iso.datetime({ offset: true });

export const sessionKind: RecordKind<Session> = {
  one: "session",
  many: "sessions",
  about:
    "An operating session is one night: its slots, the timetable version each runs, and how each area is run. Slots of a club never overlap.",
  schema: session,
  example: {
    code: "march",
    name: "March night",
    clockRatio: 4,
    areas: [{ area: "main", control: "digital" }],
    slots: [
      {
        code: "first",
        name: "First hour",
        startsAt: "2027-03-20T19:00",
        endsAt: "2027-03-20T20:00",
        layoutStart: "10:00",
        timetable: "winter",
        timetableVersion: 1,
      },
    ],
  },
  table: sessionTable,
  keep: "book",
  most: LIMITS.sessions,
  used: "session",
  owned: ({ code, slots }) => ({ kind: "slot", codes: slots.map((slot) => slotCode(code, slot.code)) }),
  lost: (before, after) => {
    const kept = new Set([
      ...after.slots.map(({ code }) => code),
      ...renamedSlots(before, after).map(([code]) => code),
    ]);
    return before.slots.filter(({ code }) => !kept.has(code)).map(({ code }) => slotCode(before.code, code));
  },
  filters: {
    from: {
      schema: instant.meta({ description: "Only those not over at this instant, `2027-03-01T00:00:00Z`." }),
      where: (from: string) => ({ slots: { some: { endsAt: { gt: new Date(from) } } } }),
    },
    to: {
      schema: instant.meta({ description: "Only those that begin before this instant." }),
      where: (to: string) => ({ slots: { some: { startsAt: { lt: new Date(to) } } } }),
    },
  },
  references: (body) => [
    ...body.areas.map(({ area }, at): Reference => ({ to: "area", code: area, path: ["areas", at, "area"] })),
    ...body.slots.map(
      ({ timetable, timetableVersion }, at): Reference => ({
        to: "timetableVersion",
        code: versionCode(timetable, timetableVersion),
        path: ["slots", at, "timetableVersion"],
      }),
    ),
  ],
  flaws: findSessionFlaws,
  clashes: findOverlaps,
  rivals: readRivals,
};

/** Sessions with a slot in the time from this session's first start to its last end. */
async function readRivals(database: Database, scope: Scope, body: Session) {
  const times = body.slots.flatMap(({ startsAt, endsAt }) =>
    [startsAt, endsAt].map((text) => readWallTime(text, scope.club.timeZone)),
  );
  const ms = times.map((time) => ("instant" in time ? time.instant.getTime() : Number.NaN));
  const within = { startsAt: { lt: new Date(Math.max(...ms)) }, endsAt: { gt: new Date(Math.min(...ms)) } };
  return readRecords(database, sessionTable, scope, { where: { slots: { some: within } } });
}
