import type { Reading, ReadingState } from "../../../shared/readings.ts";
import type { TableKind } from "../records/fields.ts";
import { CODE, NOTE } from "../records/layout-tables.ts";

const ORIGINS = ["bench", "night"] as const satisfies readonly Reading["origin"][];
const STATES = ["running", "standing", "stalled", "inrush"] as const satisfies readonly ReadingState[];

export const READING_TABLES: readonly TableKind[] = [
  {
    path: "readings",
    many: "readings",
    part: null,
    keep: "take-readings",
    isUntold: true,
    words: "readings",
    word: "reading",
    about:
      "What a meter showed: of a locomotive in one state, or of a district at a moment of a night. Fill in the cells of the one or of the other.",
    fresh: { origin: "bench" },
    fields: [
      CODE,
      { path: "takenOn", label: "Read on", holds: "day" },
      { path: "origin", label: "Where", holds: "choice", options: ORIGINS },
      { path: "ma", label: "Meter showed", holds: "whole", unit: "mA", least: 0, most: 100_000 },
      { path: "locomotive", label: "Locomotive", holds: "one", of: "locomotives", isOptional: true },
      { path: "state", label: "While it was", holds: "choice", options: STATES, isOptional: true },
      { path: "district", label: "District", holds: "one", of: "districts", isOptional: true },
      { path: "session", label: "Night", holds: "one", of: "sessions", isOptional: true },
      { path: "slot", label: "Slot", holds: "code", isOptional: true },
      { path: "layoutTime", label: "Layout clock showed", holds: "text", most: 8, isOptional: true },
      NOTE,
    ],
    // an empty cell of time is none, not a time of no letters
    complete: (record) => ({ ...record, layoutTime: record.layoutTime || null }),
  },
];
