/** A current in mA with how far it may be off, and whether somebody measured it. */
export interface Estimate {
  readonly ma: number;
  readonly lowMa: number;
  readonly highMa: number;
  readonly measured: boolean;
}

/** What readings say: their median, their spread and how many there were. */
export interface Robust {
  readonly median: number;
  /** Scaled median absolute deviation, like a standard deviation; 0 for one reading. */
  readonly spread: number;
  readonly count: number;
}

/** Where a roster's figure came from. */
export type FigureSource = "measured" | "leaflet" | "rule of thumb";

/**
 * Makes the median absolute deviation of a normal distribution its standard deviation: 1 / Φ⁻¹(3/4). Textbook; NIST/SEMATECH
 * e-Handbook of Statistical Methods, 1.3.5.6, on the deviation itself.
 */
const NORMAL_SCALE = 1.4826;

/** How many spreads about the median a range of readings reaches. An assumption: 95 % of a normal distribution. */
const SPREADS = 2;

/** No range from readings is narrower: meters differ by so much. An assumption. */
const METER_SHARE = 0.05;

/** How far the true figure may lie from one without readings. Assumptions: no standard gives currents of models. */
const SOURCE_FACTORS = {
  measured: { low: 0.9, high: 1.1 },
  leaflet: { low: 0.7, high: 1.3 },
  "rule of thumb": { low: 0.5, high: 2 },
} as const satisfies Record<FigureSource, { low: number; high: number }>;

/** Of two in the middle the mean. Before: at least one value. Cost: sorting. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}

/** Half of the readings may be wildly wrong before this is. Null without readings. */
export function robust(values: readonly number[]): Robust | null {
  if (values.length === 0) return null;
  const middle = median(values);
  const spread = NORMAL_SCALE * median(values.map((value) => Math.abs(value - middle)));
  return { median: middle, spread, count: values.length };
}

/** A tenth more of 420 is 462, where binary fractions make it a hair above. */
const ROUNDING = 1e-6;

/** Readings where there are any, else the roster's figure with the range that its source leaves. Whole mA. */
export function estimateCurrent(
  roster: { readonly ma: number; readonly source: FigureSource },
  readings: readonly number[],
): Estimate {
  const found = robust(readings);
  if (found === null) {
    const { low, high } = SOURCE_FACTORS[roster.source];
    return {
      ma: roster.ma,
      lowMa: Math.floor(roster.ma * low + ROUNDING),
      highMa: Math.ceil(roster.ma * high - ROUNDING),
      measured: roster.source === "measured",
    };
  }
  const reach = Math.max(SPREADS * found.spread, METER_SHARE * found.median);
  return {
    ma: Math.round(found.median),
    lowMa: Math.max(0, Math.floor(found.median - reach)),
    highMa: Math.ceil(found.median + reach),
    measured: true,
  };
}
