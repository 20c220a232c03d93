import { z } from "zod";
import { LIMITS } from "../../../shared/limits.ts";
import type { Decoder, Locomotive, Rake } from "../../../shared/roster.ts";
import { decoder, locomotive, rake } from "../../../shared/roster.ts";
import { code } from "../../../shared/units.ts";
import { readRecords } from "../../database/records/read-records.ts";
import { decoderTable, locomotiveTable, rakeTable } from "../../database/records/roster.ts";
import { clashesByKey } from "../../records/clashes-by-key.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { locomotiveHasDecoder } from "./errors.ts";

export const locomotiveKind: RecordKind<Locomotive> = {
  one: "locomotive",
  many: "locomotives",
  about: "A locomotive with what it draws, and where each figure came from.",
  schema: locomotive,
  example: {
    code: "E7",
    name: "Goods engine",
    lengthMm: 200,
    running: { ma: 350, source: "measured" },
    standing: { ma: 80, source: "measured" },
    stall: { ma: 900, source: "leaflet" },
    inrush: { ma: 600, source: "rule of thumb" },
    maxSpeedKmh: 80,
  },
  table: locomotiveTable,
  keep: "keep-roster",
  most: LIMITS.locomotives,
  used: "locomotive",
};

export const decoderKind: RecordKind<Decoder> = {
  one: "decoder",
  many: "decoders",
  about: "A decoder, the address it answers to, and the locomotive it sits in.",
  schema: decoder,
  example: { code: "X7", locomotive: "E7", addressKind: "long", address: 4_711 },
  table: decoderTable,
  keep: "keep-roster",
  most: LIMITS.decoders,
  filters: {
    address: {
      schema: z.coerce
        .number()
        .int()
        .min(1)
        .max(10_239)
        .meta({ description: "Only those that answer to this address." }),
      where: (address: number) => ({ address }),
    },
    locomotive: {
      schema: code.meta({ description: "Only that in this locomotive." }),
      where: (locomotiveCode: string) => ({ locomotiveCode }),
    },
  },
  references: (body) =>
    body.locomotive === null ? [] : [{ to: "locomotive", code: body.locomotive, path: ["locomotive"] }],
  clashes: (bodies) =>
    clashesByKey(
      bodies,
      (body) => (body.locomotive === null ? [] : [{ key: body.locomotive, path: ["locomotive"] }]),
      (key, other) => locomotiveHasDecoder(key, other.code),
    ),
  rivals: (database, scope, body) =>
    body.locomotive === null
      ? Promise.resolve([])
      : readRecords(database, decoderTable, scope, { where: { locomotiveCode: body.locomotive } }),
};

export const rakeKind: RecordKind<Rake> = {
  one: "rake",
  many: "rakes",
  about: "A rake is coaches or wagons that stay together.",
  schema: rake,
  example: {
    code: "R2",
    name: "Three lit coaches",
    lengthMm: 900,
    vehicles: 3,
    lighting: { ma: 45, source: "measured" },
  },
  table: rakeTable,
  keep: "keep-roster",
  most: LIMITS.rakes,
  used: "rake",
};
