import type { DutyKind } from "../../../shared/booking.ts";
import type { ClaimLocomotive, TrainControl } from "../../../shared/claims.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { BookedNight } from "../../database/bookings.ts";
import type { Engagement } from "../../planner/people/engagements.ts";
import type { WalkTime } from "../../planner/people/walking.ts";

/** A train or a duty, as one does it: real ms since 1970. */
export interface Job extends Engagement {
  readonly kind: "train" | "duty";
  /** Of its row. */
  readonly id: string;
  readonly slot: string;
  readonly code: string;
  readonly name: string;
  readonly requires: readonly string[];
  /** Departure and arrival, or the duty's start and end; `fromMs` to `untilMs` is from pick-up to hand-in. */
  readonly startMs: number;
  readonly endMs: number;
  readonly startLayoutS: number;
  readonly endLayoutS: number;
  /** Sections; null for a duty. */
  readonly startRoad: string | null;
  readonly endRoad: string | null;
  readonly train: TrainParts | null;
  readonly duty: { readonly kind: DutyKind; readonly note: string } | null;
}

export interface TrainParts {
  readonly priority: number;
  readonly calls: number;
  readonly locomotives: readonly string[];
  readonly control: TrainControl;
  /** The command system of its handset; null where it needs none. */
  readonly system: string | null;
  /** Every place at which it calls or passes under a handset. */
  readonly places: readonly string[];
}

export interface PlanMember {
  readonly code: string;
  readonly name: string;
  readonly passedFor: readonly string[];
  readonly junior: boolean;
}

export interface PlanSlot {
  readonly code: string;
  readonly name: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly layoutStartS: number;
  /** Its trains can no longer change: only such are claimed. */
  readonly issued: boolean;
}

/** All of a night but what changes with every claim. */
export interface NightPlan {
  readonly night: BookedNight;
  readonly slots: readonly PlanSlot[];
  /** By slot, start and code. */
  readonly jobs: readonly Job[];
  readonly members: ReadonlyMap<string, PlanMember>;
  readonly handsets: ReadonlyMap<string, Handset>;
  readonly locomotives: ReadonlyMap<string, ClaimLocomotive>;
  readonly placeNames: ReadonlyMap<string, string>;
  readonly roadNames: ReadonlyMap<string, string>;
  readonly walk: WalkTime;
}

export type JobKind = Job["kind"];

export const jobKey = (kind: JobKind, slot: string, id: string) => `${kind} ${slot} ${id}`;

export const findJob = (plan: NightPlan, slot: string, kind: JobKind, code: string): Job | undefined =>
  plan.jobs.find((job) => job.slot === slot && job.kind === kind && job.code === code);
