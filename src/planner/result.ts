import type { Finding } from "./findings.ts";
import type { Interval } from "./problem.ts";

/** Everything the check computed, for people to look at. Indexes into the problem, ms, mA. */
export interface CheckResult {
  /** Stopping findings first, then by time, then by code and trains: a total order. */
  readonly findings: readonly Finding[];
  /** Findings beyond the most that are listed (see MOST_FINDINGS in check.ts). */
  readonly findingsLeftOut: number;
  /** False where there were more clashes than a check follows: then there are more findings than those counted. */
  readonly complete: boolean;
  readonly occupations: readonly Occupation[];
  readonly districts: readonly LoadReport[];
  readonly supplies: readonly LoadReport[];
  readonly outputs: readonly LoadReport[];
  readonly controllers: readonly LoadReport[];
  /** One a command system. */
  readonly handsets: readonly HandsetReport[];
  readonly analog: AnalogReport;
  /** Sections that trains use, and how much of the slot they take. */
  readonly capacity: readonly BusySection[];
  readonly pushedTogether: PushedTogether;
}

/** The whole timetable, its trains pushed together as wholes: see pushed-together.ts. */
export interface PushedTogether {
  readonly ms: number;
  /** Of the slot. */
  readonly share: number;
}

/** How much of the slot a section is taken, its trains pushed together until they touch. */
export interface BusySection {
  readonly section: number;
  /** Times that a train is in it on its way. */
  readonly trains: number;
  readonly busyMs: number;
  /** Of the slot. */
  readonly share: number;
  /** How much more of the same would still go in, as a share of it; null where it is never taken. */
  readonly additional: number | null;
}

/** One train in one section. */
export interface Occupation {
  readonly section: number;
  readonly train: number;
  /** Index in the train's path. */
  readonly pathEntry: number;
  /** Head enters / tail clears; null while the train stands from the start or to the end. */
  readonly enterMs: number | null;
  readonly clearMs: number | null;
  /** Blocking time, set-up and release included. */
  readonly blocked: Interval;
}

/** A load as a step function over the slot. `curve[i]` holds from its instant to the next one's, 0 before the first. */
export interface LoadReport {
  readonly limitMa: number;
  /** The reserve's line: (1 − reserve) × limit. */
  readonly reserveMa: number;
  readonly peakMa: number;
  /** First instant of the peak; the slot's start for a load of 0. */
  readonly peakAtMs: number;
  readonly shares: readonly { readonly train: number; readonly ma: number }[];
  /** Constant part of the peak that is no train's: accessories. */
  readonly constantMa: number;
  readonly overLimitMs: number;
  readonly overReserveMs: number;
  readonly curve: readonly (readonly [atMs: number, ma: number])[];
  /** The peak with every current as low, and as high, as it may be. */
  readonly lowMa: number;
  readonly highMa: number;
  /** What trains draw at the peak, by figures that were measured, and by others. */
  readonly measuredMa: number;
  readonly assumedMa: number;
  /** One locomotive stalls, at worst; null where none ever draws here, and for supplies and transformers. */
  readonly stall: StallReport | null;
  /** Districts only: power returns after a trip, at worst; null where nothing is ever in it. */
  readonly restart: RestartReport | null;
}

/** The load with one locomotive stalled, when it is greatest, and which. */
export interface StallReport {
  readonly ma: number;
  readonly atMs: number;
  readonly locomotive: number;
  readonly train: number;
}

/** Everything in a district comes up at once; nothing surges less than it draws from then on. */
export interface RestartReport {
  readonly inrushMa: number;
  readonly atMs: number;
  /** Those in the district then. */
  readonly trains: readonly number[];
  /** The breaker holds: the inrush is within it, or over before it opens and what is drawn from then on within it. */
  readonly holds: boolean;
  readonly isWithin: boolean;
  /** Trains of each group in which to bring it up, all at once where it holds; null: the breaker bears no order. */
  readonly groups: readonly (readonly number[])[] | null;
  /** Whether no order has fewer groups. */
  readonly proven: boolean;
  /** Trains that the breaker does not bear even alone. */
  readonly tooBig: readonly number[];
}

/** Need against stock as a step function. */
export interface NeedReport {
  readonly stock: number;
  readonly peak: number;
  readonly peakAtMs: number;
  readonly trains: readonly number[];
  readonly overMs: number;
  readonly curve: readonly (readonly [atMs: number, need: number])[];
}

export interface HandsetReport extends NeedReport {
  readonly sharing: HandsetSharing;
}

/**
 * Who gets which handset of a command system. `shared`: the turns serve every train; `impossible`: proven that none do, and
 * the turns, where there are any, serve those that can be served; `not-listed`: only their number is known.
 */
export interface HandsetSharing {
  readonly status: "shared" | "impossible" | "not-decided" | "not-listed";
  /** In order of train. */
  readonly turns: readonly HandsetTurn[];
}

/** A train has a handset from pick-up to hand-in. */
export interface HandsetTurn {
  readonly train: number;
  readonly span: Interval;
  readonly handset: number;
  /** Somebody has it for this train already. */
  readonly isClaimed: boolean;
}

/** One stretch during which a train needs one and the same controller output. */
export interface AnalogRun {
  readonly train: number;
  readonly span: Interval;
  readonly sections: readonly number[];
  /** When each of `sections` must be switched to the output. */
  readonly sectionSpans: readonly Interval[];
  /** Outputs that reach every one of its sections. */
  readonly candidates: readonly number[];
  /** The train's draw on the output while it moves. */
  readonly runningMa: number;
  /** The output it gets; −1 where none is left for it. */
  readonly output: number;
}

export interface AnalogReport {
  /** `assigned`: every run has an output. `impossible`: proven. `not-decided`: the search reached its limit. */
  readonly status: "assigned" | "impossible" | "not-decided";
  readonly runs: readonly AnalogRun[];
  /** Runs that together cannot be served and of which none can be left out: the proof. Indexes into `runs`. */
  readonly core: readonly number[];
  readonly need: NeedReport;
  /**
   * Times that selectors are turned, and the fewest that any assignment could need as far as it was searched. Null
   * where not every run has an output, or the plan wants one section for two trains.
   */
  readonly turns: { readonly made: number; readonly atLeast: number } | null;
}
