import type { Interval } from "../problem.ts";
import type { LoadReport } from "../result.ts";
import { type StepFunction, sharesAt, stepCurve, timeAbove } from "../steps/step-curve.ts";
import { reserveLine } from "./limits.ts";

/** A load against its limit over `span`: slot start to the last event. `peak` and `peakAtMs` as the sweep found them; taken as exact (see withCertainty). */
export function reportLoad(
  of: StepFunction,
  peak: { readonly ma: number; readonly atMs: number },
  limitMa: number,
  reserve: number,
  span: Interval,
): LoadReport {
  const curve = stepCurve(of, span);
  const reserveMa = reserveLine(limitMa, reserve);
  return {
    limitMa,
    reserveMa,
    peakMa: peak.ma,
    peakAtMs: peak.atMs,
    shares: sharesAt(of, peak.atMs),
    constantMa: of.constant,
    overLimitMs: timeAbove(curve, limitMa, span.endMs)?.totalMs ?? 0,
    overReserveMs: timeAbove(curve, reserveMa, span.endMs)?.totalMs ?? 0,
    curve,
    lowMa: peak.ma,
    highMa: peak.ma,
    measuredMa: 0,
    assumedMa: peak.ma - of.constant,
    stall: null,
    restart: null,
  };
}
