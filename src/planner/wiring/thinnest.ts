import type { Supply, Wiring } from "../problem.ts";
import { OHM_PER_METRE_AT_20 } from "./conductors.ts";
import { type RunLimits, runFaults, runFigures } from "./run.ts";

export type ConductorName = keyof typeof OHM_PER_METRE_AT_20;

/** Of most resistance first; of equal ones by name. */
const THINNEST_FIRST = (Object.keys(OHM_PER_METRE_AT_20) as ConductorName[]).sort(
  (a, b) => OHM_PER_METRE_AT_20[b] - OHM_PER_METRE_AT_20[a] || (a < b ? -1 : 1),
);

/** The conductor of most resistance that does all that is asked over this length; null: none of the table does. */
export function thinnestConductor(
  { lengthMm, temperatureC }: Pick<Wiring, "lengthMm" | "temperatureC">,
  supply: Supply,
  peakMa: number,
  limits: RunLimits,
): ConductorName | null {
  const does = (name: ConductorName) => {
    const wiring = { ohmPerMetreAt20: OHM_PER_METRE_AT_20[name], lengthMm, temperatureC };
    const faults = runFaults(runFigures(wiring, supply, peakMa), limits);
    return !faults.drop && !faults.volts && !faults.fault;
  };
  return THINNEST_FIRST.find(does) ?? null;
}
