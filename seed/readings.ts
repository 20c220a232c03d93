import type { Reading } from "../shared/readings.ts";
import { CLEAN } from "./sessions.ts";

/** What the club read on its rollers: engines whose roster figure was only a rule of thumb, or from a leaflet. */
const READ: readonly (readonly [locomotive: string, takenOn: string, ma: readonly number[]])[] = [
  ["A23", "2027-01-16", [492, 500, 505]],
];

/** Readings of the bench. */
const bench: readonly Partial<Reading>[] = READ.flatMap(([locomotive, takenOn, all]) =>
  all.map((ma, i) => ({
    code: `bench-${locomotive}-${i + 1}`,
    takenOn,
    origin: "bench" as const,
    locomotive,
    state: "running" as const,
    ma,
  })),
);

/**
 * What the meters of the panel showed while the first crew ran. At the junction it was what the plan says; in the west only
 * diesel D202 waits with its lit vans, and draws more than its leaflet has it.
 */
const night: readonly Partial<Reading>[] = [
  { code: "night-junction", district: "D-Junction", layoutTime: "8:07", ma: 455 },
  { code: "night-west", district: "D-West", layoutTime: "7:22", ma: 204 },
].map((reading) => ({
  ...reading,
  takenOn: "2027-03-20",
  origin: "night" as const,
  session: CLEAN.session,
  slot: "first",
}));

export const readings: readonly Partial<Reading>[] = [...bench, ...night];
