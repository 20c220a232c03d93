import type { EstimateRow } from "../../../shared/estimates.ts";

/** What meters showed, `410 ± 10 mA of 3`: median, spread, how many readings. */
export const sayRead = ({ readings, medianMa, spreadMa }: EstimateRow): string =>
  readings === 0 ? "none" : `${medianMa} ± ${spreadMa} mA of ${readings}`;

/** What checks reckon with, and how far that may be off. */
export const sayUsed = ({ usedMa, lowMa, highMa }: EstimateRow): string =>
  `${usedMa} mA, ${lowMa} to ${highMa}`;
