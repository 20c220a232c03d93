import type { CurrentFigure, Decoder, Locomotive, Rake } from "../../../shared/roster.ts";
import type { AddressKind, FigureSource } from "../../../shared/vocabulary.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

const figure = (ma: number, source: string): CurrentFigure => ({ ma, source: source as FigureSource });

export const locomotiveTable: RecordTable<Locomotive, rows.Locomotive> = {
  model: "locomotive",
  toColumns: (locomotive): Omit<Prisma.LocomotiveCreateManyInput, KeptColumn> => ({
    name: locomotive.name,
    lengthMm: locomotive.lengthMm,
    runningMa: locomotive.running.ma,
    runningSource: locomotive.running.source,
    standingMa: locomotive.standing.ma,
    standingSource: locomotive.standing.source,
    stallMa: locomotive.stall.ma,
    stallSource: locomotive.stall.source,
    inrushMa: locomotive.inrush.ma,
    inrushSource: locomotive.inrush.source,
    maxSpeedKmh: locomotive.maxSpeedKmh,
    owner: locomotive.owner,
    note: locomotive.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    lengthMm: row.lengthMm,
    running: figure(row.runningMa, row.runningSource),
    standing: figure(row.standingMa, row.standingSource),
    stall: figure(row.stallMa, row.stallSource),
    inrush: figure(row.inrushMa, row.inrushSource),
    maxSpeedKmh: row.maxSpeedKmh,
    owner: row.owner,
    note: row.note,
  }),
};

export const decoderTable: RecordTable<Decoder, rows.Decoder> = {
  model: "decoder",
  toColumns: (decoder): Omit<Prisma.DecoderCreateManyInput, KeptColumn> => ({
    locomotiveCode: decoder.locomotive,
    addressKind: decoder.addressKind,
    address: decoder.address,
    analogAllowed: decoder.analogAllowed,
    note: decoder.note,
  }),
  toBody: (row) => ({
    code: row.code,
    locomotive: row.locomotiveCode,
    addressKind: row.addressKind as AddressKind,
    address: row.address,
    analogAllowed: row.analogAllowed,
    note: row.note,
  }),
};

export const rakeTable: RecordTable<Rake, rows.Rake> = {
  model: "rake",
  toColumns: (rake): Omit<Prisma.RakeCreateManyInput, KeptColumn> => ({
    name: rake.name,
    lengthMm: rake.lengthMm,
    vehicles: rake.vehicles,
    lightingMa: rake.lighting.ma,
    lightingSource: rake.lighting.source,
    inrushMa: rake.inrush.ma,
    inrushSource: rake.inrush.source,
    owner: rake.owner,
    note: rake.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    lengthMm: row.lengthMm,
    vehicles: row.vehicles,
    lighting: figure(row.lightingMa, row.lightingSource),
    inrush: figure(row.inrushMa, row.inrushSource),
    owner: row.owner,
    note: row.note,
  }),
};
