import type { Problem } from "../problem.ts";
import type { CheckResult } from "../result.ts";
import { trainsAtOnce } from "./trains-at-once.ts";

/** A part of the equipment, how much of it the timetable takes at once, and how far it would go. */
export interface Stretch {
  readonly kind: "handsets" | "outputs" | "district" | "supply" | "addresses";
  /** Command system, district or supply; −1 for outputs. */
  readonly at: number;
  readonly used: number;
  readonly has: number;
  /** Trains on their way at the same time that it would bear, the timetable's own mix growing evenly. */
  readonly trains: number;
}

export interface MostTrains {
  /** The most that are on their way at once by the timetable. */
  readonly now: number;
  /** The most that the equipment bears at once; null where nothing limits it. */
  readonly most: number | null;
  /** What gives first is first. */
  readonly stretches: readonly Stretch[];
}

/**
 * How far the present equipment goes. The timetable's own mix is taken to grow evenly: twice the trains at once take twice of
 * everything. So a part that is taken `used` of `has` bears `now × has / used`, rounded down; what bears the fewest gives
 * first. Currents leave the reserve free. Cost: linear in the parts.
 */
export function mostTrains(problem: Problem, result: CheckResult): MostTrains {
  const now = trainsAtOnce(problem);
  const free = 1 - problem.policy.reserve;
  const stretch = (kind: Stretch["kind"], at: number, used: number, has: number): Stretch[] =>
    used <= 0 || now === 0 ? [] : [{ kind, at, used, has, trains: Math.floor((now * has) / used + 1e-9) }];
  const stretches = [
    ...result.handsets.flatMap(({ peak, stock }, at) => stretch("handsets", at, peak, stock)),
    ...problem.commandSystems.flatMap(({ mostHandsets }, at) =>
      mostHandsets > 0 ? stretch("addresses", at, result.handsets[at]?.peak ?? 0, mostHandsets) : [],
    ),
    ...stretch("outputs", -1, result.analog.need.peak, result.analog.need.stock),
    ...result.districts.flatMap(({ peakMa, limitMa }, at) => stretch("district", at, peakMa, limitMa * free)),
    ...result.supplies.flatMap(({ peakMa, constantMa, limitMa }, at) =>
      stretch("supply", at, peakMa - constantMa, limitMa * free - constantMa),
    ),
  ].sort((a, b) => a.trains - b.trains || a.used / a.has - b.used / b.has);
  return { now, most: stretches[0]?.trains ?? null, stretches };
}
