import type { Interval } from "./problem.ts";

/**
 * What the check found: plain data, indexes into the problem. The sentence is made at the edge.
 * `spans` are where and when it shows; `measured` and `limit` are in the unit of the kind (see each).
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: "stops" | "warns";
  /** When it holds, ms, half-open; one instant is [t, t + 1). */
  readonly span: Interval;
  readonly trains: readonly number[];
  readonly sections: readonly number[];
  readonly districts: readonly number[];
  readonly supplies: readonly number[];
  readonly outputs: readonly number[];
  readonly controllers: readonly number[];
  readonly commandSystems: readonly number[];
  readonly locomotives: readonly number[];
  readonly rakes: readonly number[];
  readonly members: readonly number[];
  readonly handsets: readonly number[];
  readonly measured: number | null;
  readonly limit: number | null;
  readonly unit: FindingUnit;
  /** Loads only: the instant of the peak; otherwise span.startMs. */
  readonly atMs: number;
  /** Loads only: ms above the limit within the slot. */
  readonly overMs: number | null;
  /** Loads only: who makes up the peak. */
  readonly shares: readonly Share[];
  /** Path faults: entry index in the train's path. Otherwise null. */
  readonly pathEntry: number | null;
  /**
   * outputs-too-few: how many more outputs, reaching `sections`, would serve. district-trips-on-restart: in how many groups
   * the breaker bears it, null where in none. Otherwise null.
   */
  readonly needed: number | null;
}

export interface Share {
  readonly train: number;
  readonly ma: number;
}

export type FindingUnit =
  | "trains"
  | "mm"
  | "km/h"
  | "mA"
  | "handsets"
  | "outputs"
  | "ms"
  | "address"
  | "addresses"
  | "share"
  | "V"
  | "none";

/** measured / limit of each: in the comment. */
export type FindingCode =
  | "section-clash" //            trains: 2 / 1
  | "shared-section-too-full" //  mm: sum of train lengths / section length
  | "path-not-linked"
  | "path-times-backwards" //     ms: how far back / 0
  | "path-too-fast" //            km/h: speed / limit (section's or locomotive's)
  | "path-section-not-fed"
  | "path-no-changeover"
  | "train-longer-than-road" //   mm: train / section
  | "stock-elsewhere"
  | "stock-in-two-trains"
  | "output-none-reaches"
  | "outputs-too-few" //          outputs: needed at once / that could serve
  | "outputs-not-decided"
  | "output-over-rating" //       mA
  | "output-too-close"
  | "controller-over-rating"
  | "controller-too-close"
  | "district-will-trip"
  | "district-too-close"
  | "supply-over-rating"
  | "supply-too-close"
  | "handsets-too-few" //         handsets: needed / in stock
  | "train-outside-slot" //       ms: past the end / 0
  | "output-trips-on-stall" //    mA: what its train draws with the worst locomotive stalled / rating
  | "district-trips-on-stall" //  mA: the load with the worst locomotive stalled / breaker
  | "district-trips-on-restart" // mA: inrush of all that is in it / breaker
  | "address-refused" //          address: the decoder's / the highest of its kind that the system takes
  | "address-used-twice" //       address
  | "addresses-too-many" //       addresses: in use at once / most
  | "handsets-too-many" //        handsets: in use at once / most
  | "analog-only-on-digital"
  | "decoder-not-for-analog"
  | "train-bridges-feeds" //      mm: train / section
  | "return-loop-too-short" //    mm: train / loop
  | "handset-none-usable"
  | "handsets-do-not-fit" //      handsets: trains that want one / handsets that could serve them
  | "handsets-not-decided" //     handsets: as above
  | "handset-not-ready"
  | "handset-out-of-reach"
  | "handset-battery-short" //    ms: away / battery
  | "member-in-two-places"
  | "walk-too-short" //           ms: gap / walk
  | "driver-not-passed"
  | "junior-unsupervised"
  | "section-too-busy" //         share: of the time it is taken, trains pushed together / policy
  | "district-drop-too-big" //    V: lost in the wires at the peak / allowed
  | "district-volts-too-low" //   V: at the far end at the peak / least
  | "district-fault-not-seen" //  mA: a short at the far end brings / trip current × margin
  | "district-test-failed"
  | "district-not-tested";

/** A finding with nothing in it but what is given: no trains, no sections, no figures; `atMs` the span's start. */
export function createFinding(
  given: Partial<Finding> & Pick<Finding, "code" | "severity" | "span">,
): Finding {
  // field by field: several times as fast as spreading, and a check makes thousands
  return {
    code: given.code,
    severity: given.severity,
    span: given.span,
    trains: given.trains ?? NONE,
    sections: given.sections ?? NONE,
    districts: given.districts ?? NONE,
    supplies: given.supplies ?? NONE,
    outputs: given.outputs ?? NONE,
    controllers: given.controllers ?? NONE,
    commandSystems: given.commandSystems ?? NONE,
    locomotives: given.locomotives ?? NONE,
    rakes: given.rakes ?? NONE,
    members: given.members ?? NONE,
    handsets: given.handsets ?? NONE,
    measured: given.measured ?? null,
    limit: given.limit ?? null,
    unit: given.unit ?? "none",
    atMs: given.atMs ?? given.span.startMs,
    overMs: given.overMs ?? null,
    shares: given.shares ?? NO_SHARES,
    pathEntry: given.pathEntry ?? null,
    needed: given.needed ?? null,
  };
}

const NONE: readonly number[] = [];
const NO_SHARES: readonly Share[] = [];
