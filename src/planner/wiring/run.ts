import type { District, Problem, Supply, Wiring } from "../problem.ts";

/** Change of copper's resistance for each kelvin off 20 °C: IEC 60028. */
const COPPER_PER_KELVIN = 0.00393;

/** What a two-wire run does between a supply and the far end of its district. Ohms, volts, mA. */
export interface RunFigures {
  readonly loopOhm: number;
  /** Lost in the wires at the peak. */
  readonly dropV: number;
  readonly farEndV: number;
  /** What a short at the far end brings. */
  readonly faultMa: number;
}

/** What the run must do. */
export interface RunLimits {
  readonly dropV: number;
  readonly farEndV: number;
  readonly faultMa: number;
}

/** Resistance there and back, corrected to the stated temperature. */
export function loopOhm({ ohmPerMetreAt20, lengthMm, temperatureC }: Wiring): number {
  const perMetre = ohmPerMetreAt20 * (1 + COPPER_PER_KELVIN * (temperatureC - 20));
  return (2 * lengthMm * perMetre) / 1_000;
}

/**
 * Design section 5, bus wiring: drop = loop resistance × peak; prospective fault current = volts / (source + loop). A run
 * without any resistance brings whatever it is asked for.
 */
export function runFigures(wiring: Wiring, { volts, sourceOhm }: Supply, peakMa: number): RunFigures {
  const loop = loopOhm(wiring);
  const dropV = (loop * peakMa) / 1_000;
  return {
    loopOhm: loop,
    dropV,
    farEndV: volts - dropV,
    faultMa: sourceOhm + loop > 0 ? (1_000 * volts) / (sourceOhm + loop) : Number.POSITIVE_INFINITY,
  };
}

/** What the wires of a district must do: policy, NMRA S-9.1 and its breaker. */
export function runLimits({ policy, scale }: Problem, supply: Supply, { breakerMa }: District): RunLimits {
  return {
    dropV: supply.volts * policy.dropShare,
    farEndV: trackVolts(scale).least,
    faultMa: breakerMa * policy.faultMargin,
  };
}

/** A hair, so that what is worked out to be equal is not told apart by binary fractions. */
const HAIR = 1e-9;

/** What of a run falls short of its limits. */
export function runFaults(figures: RunFigures, limits: RunLimits) {
  return {
    drop: figures.dropV > limits.dropV + HAIR,
    volts: figures.farEndV < limits.farEndV - HAIR,
    fault: figures.faultMa < limits.faultMa - HAIR,
  };
}

/** Volts at the track under digital control: NMRA S-9.1 (2020) table 3, by scale. */
export interface TrackVolts {
  readonly least: number;
  readonly normal: number;
  readonly most: number;
  /** What decoders must survive. */
  readonly survived: number;
}

/** N and smaller from 1:140 on, HO, S and O, larger than 1:40: groups of the standard, where scales between fall from memory. */
export function trackVolts(scale: number): TrackVolts {
  if (scale >= 140) return { least: 8.5, normal: 12, most: 22, survived: 24 };
  if (scale >= 40) return { least: 8.5, normal: 15, most: 22, survived: 27 };
  return { least: 8.5, normal: 18, most: 22, survived: 27 };
}

/** Nominal analog volts by gauge in mm: MOROP NEM 630 (1982). */
export function analogVolts(gaugeMm: number): number {
  if (gaugeMm <= 6.5) return 8;
  return gaugeMm < 32 ? 12 : 16;
}
