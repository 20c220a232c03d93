import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Reading } from "../../../shared/readings.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const readingTable: RecordTable<Reading, rows.Reading> = {
  model: "reading",
  toColumns: (reading): Omit<Prisma.ReadingCreateManyInput, KeptColumn> => ({
    // a day has no zone; the driver keeps dates as UTC midnight
    takenOn: new Date(`${reading.takenOn}T00:00:00Z`),
    origin: reading.origin,
    locomotiveCode: reading.locomotive,
    state: reading.state,
    districtCode: reading.district,
    sessionCode: reading.session,
    slotCode: reading.slot,
    layoutS: reading.layoutTime === null ? null : parseLayoutTime(reading.layoutTime),
    ma: reading.ma,
    note: reading.note,
  }),
  toBody: (row) => ({
    code: row.code,
    takenOn: row.takenOn.toISOString().slice(0, 10),
    origin: row.origin as Reading["origin"],
    locomotive: row.locomotiveCode,
    state: row.state as Reading["state"],
    district: row.districtCode,
    session: row.sessionCode,
    slot: row.slotCode,
    layoutTime: row.layoutS === null ? null : toLayoutTimeText(row.layoutS),
    ma: row.ma,
    note: row.note,
  }),
};
