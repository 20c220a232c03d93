import type { LayoutDocument, PlanSlot, RosterDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { Member } from "../../../shared/members.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Reading } from "../../../shared/readings.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { SlotFrame } from "./clock.ts";

/** What a check is made from, stored or posted. */
export interface PlanSource {
  readonly scale: number;
  readonly policy: Policy;
  readonly layout: LayoutDocument;
  readonly roster: RosterDocument;
  readonly handsets: readonly Handset[];
  /** Of locomotives and districts. */
  readonly readings: readonly Reading[];
  readonly trains: readonly Train[];
  readonly areas: PlanSlot["areas"];
  readonly frame: SlotFrame;
  /** Who drives what, as far as it is known. */
  readonly crew: CrewSource;
  /** The session's other slots; none for a plan posted whole. */
  readonly otherSlots: readonly OtherSlot[];
}

/** Another slot of the session, with all trains of its timetable version. */
export interface OtherSlot {
  readonly lengthMs: number;
  readonly layoutStartSeconds: number;
  readonly trains: readonly Train[];
}

export interface CrewSource {
  readonly members: readonly Member[];
  readonly turns: readonly {
    readonly train: string;
    readonly member: string;
    readonly handset: string | null;
  }[];
  readonly isSupervised: boolean;
}
