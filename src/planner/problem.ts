/**
 * What the planner is given: plain data, references as indexes into the arrays of the same problem (−1: none).
 * Lengths mm, currents mA, speeds prototype km/h, times whole ms of real time since the session's start,
 * intervals half-open. Design sections 3 to 7.
 */
export interface Problem {
  /** Denominator of the scale: 87. */
  readonly scale: number;
  readonly policy: PlannerPolicy;
  readonly slot: Interval;
  readonly sections: readonly Section[];
  readonly links: readonly Link[];
  readonly commandSystems: readonly CommandSystem[];
  readonly supplies: readonly Supply[];
  readonly districts: readonly District[];
  readonly controllers: readonly Controller[];
  readonly outputs: readonly Output[];
  readonly locomotives: readonly Locomotive[];
  readonly rakes: readonly Rake[];
  readonly trains: readonly Train[];
}

/** Half-open, ms. */
export interface Interval {
  readonly startMs: number;
  readonly endMs: number;
}

export interface PlannerPolicy {
  readonly setUpMs: number;
  readonly releaseMs: number;
  readonly releaseDwellMs: number;
  readonly pickUpMs: number;
  readonly handInMs: number;
  /** Share of every current limit to be kept free, 0 to below 1. */
  readonly reserve: number;
}

/** How a section is run in this session; `dead`: nothing feeds it as the session has it. */
export type SectionControl = "analog" | "digital" | "changeover" | "dead";

export interface Section {
  readonly code: string;
  readonly lengthMm: number;
  /** Index of its place in the layout, −1 on the open line; two sections of one place have the same. */
  readonly place: number;
  readonly control: SectionControl;
  /** Digital and marked shared: trains may stand together while their lengths fit. */
  readonly shared: boolean;
  /** Index into districts, −1 where it is not digital. */
  readonly district: number;
  /** Outputs that its selector reaches; empty where it has none. */
  readonly outputs: readonly number[];
  /** 0 where there is no limit. */
  readonly maxSpeedKmh: number;
  readonly mustClear: boolean;
  readonly handStaging: boolean;
}

export interface Link {
  readonly from: number;
  readonly to: number;
  readonly oneWay: boolean;
}

export interface CommandSystem {
  readonly code: string;
  /** Handsets in stock that are ready. */
  readonly handsets: number;
}

export interface Supply {
  readonly code: string;
  readonly commandSystem: number;
  readonly ratingMa: number;
  readonly accessoryMa: number;
}

export interface District {
  readonly code: string;
  readonly supply: number;
  readonly breakerMa: number;
}

export interface Controller {
  readonly code: string;
  readonly transformerMa: number;
  readonly accessoryMa: number;
}

export interface Output {
  readonly code: string;
  readonly controller: number;
  readonly ratingMa: number;
}

export interface Locomotive {
  readonly code: string;
  readonly lengthMm: number;
  readonly runningMa: number;
  readonly standingMa: number;
  /** 0 where there is no limit. */
  readonly maxSpeedKmh: number;
}

export interface Rake {
  readonly code: string;
  readonly lightingMa: number;
}

export interface Train {
  readonly code: string;
  readonly lengthMm: number;
  readonly power: readonly MotivePower[];
  readonly rakes: readonly number[];
  /** Two entries or more; the first has a departure, the last an arrival. */
  readonly path: readonly PathEntry[];
  /** When its stock is placed by hand, null: not by hand. */
  readonly placedMs: number | null;
  readonly removedMs: number | null;
}

export interface MotivePower {
  readonly locomotive: number;
  readonly atRear: boolean;
}

/** Both null: not a call. Equal: a pass. */
export interface PathEntry {
  readonly section: number;
  readonly arriveMs: number | null;
  readonly departMs: number | null;
}
