import type { RosterMapping } from "../../../../shared/mapped-import.ts";

/** A mapping with a column of numbers, and every figure the same for all but where it is given. */
export const plainMapping = (given: Partial<RosterMapping>): RosterMapping => {
  const current = { column: null, unit: "mA", constantMa: 300, source: "rule of thumb" } as const;
  return {
    code: "Number",
    name: null,
    length: { column: null, unit: "mm", constantMm: 200 },
    running: current,
    standing: current,
    stall: current,
    inrush: current,
    maxSpeed: { column: null, unit: "km/h" },
    address: null,
    owner: null,
    note: null,
    ...given,
  };
};
