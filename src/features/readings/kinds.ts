import { LIMITS } from "../../../shared/limits.ts";
import { type Reading, reading } from "../../../shared/readings.ts";
import { code } from "../../../shared/units.ts";
import { slotCode } from "../../database/records/known-codes.ts";
import { readingTable } from "../../database/records/readings.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { IN_NO_SLOT } from "./errors.ts";

const only = (of: string) => code.meta({ description: `Only those of this ${of}.` });

export const readingKind: RecordKind<Reading> = {
  one: "reading",
  many: "readings",
  about:
    "A reading is what a meter showed: of one locomotive in one state, or of a district at a moment of a night. It counts more than any figure of the roster.",
  schema: reading,
  example: {
    code: "bench7",
    takenOn: "2027-03-06",
    origin: "bench",
    locomotive: "E7",
    state: "running",
    ma: 320,
  },
  table: readingTable,
  keep: "take-readings",
  most: LIMITS.readings,
  filters: {
    locomotive: { schema: only("locomotive"), where: (locomotiveCode: string) => ({ locomotiveCode }) },
    district: { schema: only("district"), where: (districtCode: string) => ({ districtCode }) },
    session: { schema: only("night"), where: (sessionCode: string) => ({ sessionCode }) },
  },
  references: ({ locomotive, district, session, slot }) => [
    ...refer("locomotive", locomotive),
    ...refer("district", district),
    ...refer("session", session),
    ...refer("slot", session === null || slot === null ? null : slotCode(session, slot)),
  ],
  // an older one whose slot nobody knows any more may come with an import
  inspect: async (_, __, { district, slot }) =>
    district !== null && slot === null ? [{ path: ["slot"], detail: IN_NO_SLOT }] : [],
};

const refer = (to: "locomotive" | "district" | "session" | "slot", of: string | null): Reference[] =>
  of === null ? [] : [{ to, code: of, path: [to] }];
