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
  readonly places: readonly Place[];
  readonly walks: readonly Walk[];
  /** All of the club, ready or not. */
  readonly handsets: readonly Handset[];
  readonly crew: Crew;
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
  /** How long the surge lasts when power returns. */
  readonly inrushMs: number;
  /** A short at the far end must bring at least this many times the trip current. */
  readonly faultMargin: number;
  /** Share of a supply's volts that wires may lose. */
  readonly dropShare: number;
  /** Share of the time for which a section may be taken. */
  readonly busyShare: number;
  /** How many times the straight line one walks where no walk is stated. */
  readonly walkingDetour: number;
  readonly walkingMmPerSecond: number;
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
  /** Part of a return loop; such sections in a row on a path are one loop. */
  readonly returnLoop: boolean;
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
  /** Most handsets and decoder addresses at once; 0: no limit. */
  readonly mostHandsets: number;
  readonly mostAddresses: number;
  /** Highest addresses that it accepts. */
  readonly shortAddressMost: number;
  readonly longAddressMost: number;
}

export interface Supply {
  readonly code: string;
  readonly commandSystem: number;
  readonly ratingMa: number;
  readonly accessoryMa: number;
  readonly volts: number;
  /** Its own resistance. */
  readonly sourceOhm: number;
}

export interface District {
  readonly code: string;
  readonly supply: number;
  readonly breakerMa: number;
  /** How long its breaker bears more. */
  readonly tripDelayMs: number;
  /** Null: not written down. */
  readonly wiring: Wiring | null;
  /** What the last short test said; `unsaid`: nothing is known of tests at all. */
  readonly tested: "passed" | "failed" | "untested" | "unsaid";
}

/** A two-wire run. */
export interface Wiring {
  /** Of one wire, at 20 °C. */
  readonly ohmPerMetreAt20: number;
  /** One way. */
  readonly lengthMm: number;
  readonly temperatureC: number;
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
  readonly stallMa: number;
  readonly inrushMa: number;
  /** Null: it runs on analog track only. */
  readonly decoder: Decoder | null;
  /** Command systems that drive it in other slots of the session, so that its address is in use that night. */
  readonly elsewhereSystems: readonly number[];
  /** 0 where there is no limit. */
  readonly maxSpeedKmh: number;
  /** How far the currents may be off; null: nothing is known of that. */
  readonly ranges: { readonly running: CurrentRange; readonly standing: CurrentRange } | null;
}

/** A current lies between the two; whether it was measured. */
export interface CurrentRange {
  readonly lowMa: number;
  readonly highMa: number;
  readonly measured: boolean;
}

export interface Decoder {
  readonly addressKind: "short" | "long";
  readonly address: number;
  /** CV29 bit 2. */
  readonly analogAllowed: boolean;
}

export interface Rake {
  readonly code: string;
  readonly lightingMa: number;
  readonly inrushMa: number;
  /** Of its lighting; null: nothing is known of how far that may be off. */
  readonly range: CurrentRange | null;
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
  /** What its driver must be passed for. */
  readonly requires: readonly string[];
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

export interface Place {
  readonly code: string;
  /** In the room; null: not measured. */
  readonly xMm: number | null;
  readonly yMm: number | null;
}

/** A walk between two places as somebody measured it; the way back is as long where it is not stated itself. */
export interface Walk {
  readonly from: number;
  readonly to: number;
  readonly ms: number;
}

export interface Handset {
  readonly code: string;
  readonly commandSystem: number;
  readonly kind: "tethered" | "radio" | "fixed";
  /** Where it can be used; a radio one with none everywhere. */
  readonly places: readonly number[];
  /** How long a charge lasts; null: fed by its cable. */
  readonly batteryMs: number | null;
  readonly ready: boolean;
}

/** Who drives what, as far as it is known; both empty where nobody has said. */
export interface Crew {
  readonly members: readonly CrewMember[];
  readonly turns: readonly Turn[];
  /** An adult will be there in this slot. */
  readonly isSupervised: boolean;
}

export interface CrewMember {
  readonly code: string;
  readonly passedFor: readonly string[];
  /** Needs a supervising adult in the same slot. */
  readonly junior: boolean;
}

export interface Turn {
  readonly train: number;
  readonly member: number;
  /** −1: none is chosen, or none is needed. */
  readonly handset: number;
}
