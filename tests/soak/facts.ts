/** A night as its tables hold it: what the judge knows. Instants are ms since 1970. */
export interface NightFacts {
  readonly state: string;
  readonly pickUpMs: number;
  readonly handInMs: number;
  readonly members: ReadonlyMap<string, MemberFact>;
  readonly handsets: ReadonlyMap<string, HandsetFact>;
  /** Trains and duties by their code: the made club calls none like another. */
  readonly jobs: ReadonlyMap<string, JobFact>;
  /** Members who say that they come. */
  readonly attending: ReadonlySet<string>;
  /** Seconds of the way between two places, `from>to`. */
  readonly walks: ReadonlyMap<string, number>;
  readonly claims: readonly ClaimFact[];
  /** By their number: the first waits longest. */
  readonly queue: readonly WaitFact[];
}

export interface MemberFact {
  readonly code: string;
  readonly passedFor: readonly string[];
  readonly junior: boolean;
}

export interface HandsetFact {
  readonly code: string;
  readonly system: string;
  readonly state: string;
  readonly kind: string;
  readonly places: readonly string[];
  readonly batteryMinutes: number | null;
}

/** A train, from departure to arrival, or a duty. */
export interface JobFact {
  readonly code: string;
  readonly kind: "train" | "duty";
  readonly startMs: number;
  readonly endMs: number;
  readonly requires: readonly string[];
  readonly firstPlace: string;
  readonly lastPlace: string;
  /** All at which it calls or passes. */
  readonly places: readonly string[];
  /** Command systems whose sections it runs over. */
  readonly systems: readonly string[];
}

export interface ClaimFact {
  readonly id: string;
  readonly job: string;
  readonly member: string;
  readonly handset: string | null;
  readonly fromMs: number;
  readonly untilMs: number;
}

export interface WaitFact {
  readonly job: string;
  readonly member: string;
}
