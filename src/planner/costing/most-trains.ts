import { mostAddressesAtOnce } from "../addresses/most-at-once.ts";
import { compilePlan } from "../compile-plan.ts";
import { handsetNeeds } from "../handsets/handset-need.ts";
import type { Problem } from "../problem.ts";
import type { CheckResult } from "../result.ts";
import { trainsAtOnce } from "./trains-at-once.ts";

/** A part of the equipment, how much of it the timetable takes at once, and how far it would go. */
export interface Stretch {
  /**
   * `handsets`: those in stock; `handset-limit` and `addresses`: what the command system takes at once; `outputs`: how many
   * there are; the others: current.
   */
  readonly kind:
    | "handsets"
    | "handset-limit"
    | "addresses"
    | "outputs"
    | "output"
    | "transformer"
    | "district"
    | "supply";
  /** Command system, output, controller, district or supply; −1 for all outputs. */
  readonly at: number;
  readonly used: number;
  /** Currents: without the reserve and what accessories take; never below 0. */
  readonly has: number;
  /** Trains on their way at the same time that it would bear, the timetable's own mix growing evenly. */
  readonly trains: number;
}

export interface MostTrains {
  /** The most that are on their way at once by the timetable. */
  readonly now: number;
  /** The most that the equipment bears at once; null where nothing limits it, or nothing runs. */
  readonly most: number | null;
  /** What gives first is first. */
  readonly stretches: readonly Stretch[];
}

/**
 * How far the present equipment goes. The timetable's own mix is taken to grow evenly: twice the trains at once take twice of
 * everything. So a part that is taken `used` of `has` bears `now × has / used`, rounded down; what bears the fewest gives
 * first, of equals the one that is fuller. An output drives one train, so more trains take more outputs and not more of one:
 * its rating counts only where the train that it has is too much for it. Currents leave the reserve free. `result`: the check
 * of the same problem. Cost: linear in the parts, and sorting the handset needs for each command system.
 */
export function mostTrains(problem: Problem, result: CheckResult): MostTrains {
  const plan = compilePlan(problem);
  const needs = handsetNeeds(plan);
  const now = trainsAtOnce(plan);
  const stretch = (kind: Stretch["kind"], at: number, used: number, has: number): Stretch[] =>
    used <= 0 || now === 0
      ? []
      : [{ kind, at, used, has, trains: Math.floor((now * has) / used + ROUNDING) }];
  const current = (kind: Stretch["kind"], { peakMa, constantMa, reserveMa }: Load, at: number) =>
    stretch(kind, at, peakMa - constantMa, Math.max(0, reserveMa - constantMa));
  const stretches = [
    ...problem.commandSystems.flatMap(({ handsets, mostHandsets, mostAddresses }, at) => {
      const peak = result.handsets[at]?.peak ?? 0;
      return [
        ...stretch("handsets", at, peak, handsets),
        ...(mostHandsets > 0 ? stretch("handset-limit", at, peak, mostHandsets) : []),
        ...(mostAddresses > 0
          ? stretch("addresses", at, mostAddressesAtOnce(problem, needs, at), mostAddresses)
          : []),
      ];
    }),
    ...stretch("outputs", -1, result.analog.need.peak, result.analog.need.stock),
    ...result.outputs.flatMap((load, at) =>
      load.peakMa > load.reserveMa ? current("output", load, at) : [],
    ),
    ...result.controllers.flatMap((load, at) => current("transformer", load, at)),
    ...result.districts.flatMap((load, at) => current("district", load, at)),
    ...result.supplies.flatMap((load, at) => current("supply", load, at)),
  ].sort((a, b) => a.trains - b.trains || a.has / a.used - b.has / b.used);
  return { now, most: stretches[0]?.trains ?? null, stretches };
}

type Load = Pick<CheckResult["supplies"][number], "peakMa" | "constantMa" | "reserveMa">;

/** A whole number of trains stays one where binary fractions come out a hair below it. */
const ROUNDING = 1e-9;
