import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Timetable, TimetableVersion, Train } from "../../../shared/timetable.ts";
import type { LocomotivePosition, TimetableState } from "../../../shared/vocabulary.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { ClubScope, KeptColumn, RecordTable, Scope } from "./record-table.ts";

export const timetableTable: RecordTable<Timetable, rows.Timetable> = {
  model: "timetable",
  toColumns: (timetable): Omit<Prisma.TimetableCreateManyInput, KeptColumn> => ({
    name: timetable.name,
    note: timetable.note,
  }),
  toBody: (row) => ({ code: row.code, name: row.name, note: row.note }),
};

export const toVersionBody = (row: rows.TimetableVersion): TimetableVersion => ({
  number: row.number,
  state: row.state as TimetableState,
  note: row.note,
});

/** The trains of one timetable version. */
export const trainScope = (club: ClubScope, versionId: string): Scope => ({
  club,
  columns: { clubId: club.id, versionId },
});

const toSeconds = (text: string | null) => (text === null ? null : parseLayoutTime(text));
const toText = (seconds: number | null) => (seconds === null ? null : toLayoutTimeText(seconds));

type TrainRow = Prisma.TrainGetPayload<{ include: { path: true; motivePower: true; rakes: true } }>;

export const trainTable: RecordTable<Train, TrainRow> = {
  model: "train",
  toColumns: (train): Omit<Prisma.TrainCreateManyInput, KeptColumn> => ({
    name: train.name,
    priority: train.priority,
    earlierMinutes: train.earlierMinutes,
    laterMinutes: train.laterMinutes,
    lengthMm: train.lengthMm,
    placedS: toSeconds(train.placedAt),
    removedS: toSeconds(train.removedAt),
    requires: train.requires,
    note: train.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    priority: row.priority,
    earlierMinutes: row.earlierMinutes,
    laterMinutes: row.laterMinutes,
    motivePower: row.motivePower.map((power) => ({
      locomotive: power.locomotiveCode,
      position: power.standing as LocomotivePosition,
    })),
    rakes: row.rakes.map((rake) => rake.rakeCode),
    lengthMm: row.lengthMm,
    placedAt: toText(row.placedS),
    removedAt: toText(row.removedS),
    requires: row.requires,
    path: row.path.map((entry) => ({
      section: entry.sectionCode,
      arrive: toText(entry.arriveS),
      depart: toText(entry.departS),
    })),
    note: row.note,
  }),
  parts: [
    {
      field: "path",
      model: "pathEntry",
      owner: "trainId",
      toRows: (train): Omit<Prisma.PathEntryCreateManyInput, "clubId" | "trainId">[] =>
        train.path.map((entry, position) => ({
          position,
          sectionCode: entry.section,
          arriveS: toSeconds(entry.arrive),
          departS: toSeconds(entry.depart),
        })),
    },
    {
      field: "motivePower",
      model: "trainLocomotive",
      owner: "trainId",
      toRows: (train): Omit<Prisma.TrainLocomotiveCreateManyInput, "clubId" | "trainId">[] =>
        train.motivePower.map(({ locomotive, position: standing }, position) => ({
          position,
          locomotiveCode: locomotive,
          standing,
        })),
    },
    {
      field: "rakes",
      model: "trainRake",
      owner: "trainId",
      toRows: (train): Omit<Prisma.TrainRakeCreateManyInput, "clubId" | "trainId">[] =>
        train.rakes.map((rakeCode, position) => ({ position, rakeCode })),
    },
  ],
};
