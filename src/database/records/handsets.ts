import type { Handset } from "../../../shared/handsets.ts";
import type { HandsetKind, HandsetState } from "../../../shared/vocabulary.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const handsetTable: RecordTable<Handset, Prisma.HandsetGetPayload<{ include: { places: true } }>> = {
  model: "handset",
  toColumns: (handset): Omit<Prisma.HandsetCreateManyInput, KeptColumn> => ({
    name: handset.name,
    commandSystemCode: handset.commandSystem,
    kind: handset.kind,
    batteryMinutes: handset.batteryMinutes,
    state: handset.state,
    owner: handset.owner,
    note: handset.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    commandSystem: row.commandSystemCode,
    kind: row.kind as HandsetKind,
    places: row.places.map((place) => place.placeCode),
    batteryMinutes: row.batteryMinutes,
    state: row.state as HandsetState,
    owner: row.owner,
    note: row.note,
  }),
  parts: [
    {
      field: "places",
      model: "handsetPlace",
      owner: "handsetId",
      toRows: (handset): Omit<Prisma.HandsetPlaceCreateManyInput, "clubId" | "handsetId">[] =>
        handset.places.map((placeCode, position) => ({ position, placeCode })),
    },
  ],
};
