import type { Area, Line, Link, Place, Section, Walk } from "../../../shared/layout.ts";
import type { SectionUse, SectionWiring, Sharing } from "../../../shared/vocabulary.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const areaTable: RecordTable<Area, rows.Area> = {
  model: "area",
  toColumns: (area): Omit<Prisma.AreaCreateManyInput, KeptColumn> => ({ name: area.name, note: area.note }),
  toBody: (row) => ({ code: row.code, name: row.name, note: row.note }),
};

export const placeTable: RecordTable<Place, rows.Place> = {
  model: "place",
  toColumns: (place): Omit<Prisma.PlaceCreateManyInput, KeptColumn> => ({
    name: place.name,
    xMm: place.xMm,
    yMm: place.yMm,
    note: place.note,
  }),
  toBody: (row) => ({ code: row.code, name: row.name, xMm: row.xMm, yMm: row.yMm, note: row.note }),
};

export const walkTable: RecordTable<Walk, rows.Walk> = {
  model: "walk",
  toColumns: (walk): Omit<Prisma.WalkCreateManyInput, KeptColumn> => ({
    fromCode: walk.from,
    toCode: walk.to,
    seconds: walk.seconds,
    note: walk.note,
  }),
  toBody: (row) => ({
    code: row.code,
    from: row.fromCode,
    to: row.toCode,
    seconds: row.seconds,
    note: row.note,
  }),
};

export const lineTable: RecordTable<Line, Prisma.LineGetPayload<{ include: { stops: true } }>> = {
  model: "line",
  toColumns: (line): Omit<Prisma.LineCreateManyInput, KeptColumn> => ({ name: line.name, note: line.note }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    stops: row.stops.map((stop) => ({ place: stop.placeCode, atMm: stop.atMm })),
    note: row.note,
  }),
  parts: [
    {
      field: "stops",
      model: "lineStop",
      owner: "lineId",
      toRows: (line): Omit<Prisma.LineStopCreateManyInput, "clubId" | "lineId">[] =>
        line.stops.map((stop, position) => ({ position, placeCode: stop.place, atMm: stop.atMm })),
    },
  ],
};

export const sectionTable: RecordTable<Section, rows.Section> = {
  model: "section",
  toColumns: (section): Omit<Prisma.SectionCreateManyInput, KeptColumn> => ({
    name: section.name,
    areaCode: section.area,
    placeCode: section.place,
    use: section.use,
    lengthMm: section.lengthMm,
    wiring: section.wiring,
    changeover: section.changeover,
    sharing: section.sharing,
    districtCode: section.district,
    maxSpeedKmh: section.maxSpeedKmh,
    mustClear: section.mustClear,
    handStaging: section.handStaging,
    returnLoop: section.returnLoop,
    note: section.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    area: row.areaCode,
    place: row.placeCode,
    use: row.use as SectionUse,
    lengthMm: row.lengthMm,
    wiring: row.wiring as SectionWiring,
    changeover: row.changeover,
    sharing: row.sharing as Sharing,
    district: row.districtCode,
    maxSpeedKmh: row.maxSpeedKmh,
    mustClear: row.mustClear,
    handStaging: row.handStaging,
    returnLoop: row.returnLoop,
    note: row.note,
  }),
};

export const linkTable: RecordTable<Link, rows.Link> = {
  model: "link",
  toColumns: (link): Omit<Prisma.LinkCreateManyInput, KeptColumn> => ({
    fromCode: link.from,
    toCode: link.to,
    oneWay: link.oneWay,
    note: link.note,
  }),
  toBody: (row) => ({
    code: row.code,
    from: row.fromCode,
    to: row.toCode,
    oneWay: row.oneWay,
    note: row.note,
  }),
};
