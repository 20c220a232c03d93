import type { Reading } from "../shared/readings.ts";

/** What the club read on its rollers: engines whose roster figure was only a rule of thumb, or from a leaflet. */
const READ: readonly (readonly [locomotive: string, takenOn: string, ma: readonly number[]])[] = [
  ["A23", "2027-01-16", [492, 500, 505]],
];

/** Readings of the bench. */
export const readings: readonly Partial<Reading>[] = READ.flatMap(([locomotive, takenOn, all]) =>
  all.map((ma, i) => ({
    code: `bench-${locomotive}-${i + 1}`,
    takenOn,
    origin: "bench" as const,
    locomotive,
    state: "running" as const,
    ma,
  })),
);
