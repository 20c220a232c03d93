import type { LayoutDocument, PlanSlot, RosterDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { Reading } from "../../../shared/readings.ts";
import type { SlotFrame } from "./clock.ts";

/** What a check is made from, stored or posted. */
export interface PlanSource {
  readonly scale: number;
  readonly policy: Policy;
  readonly layout: LayoutDocument;
  readonly roster: RosterDocument;
  readonly handsets: readonly Handset[];
  readonly trains: readonly Train[];
  /** Of locomotives and districts. */
  readonly readings: readonly Reading[];
  readonly areas: PlanSlot["areas"];
  readonly frame: SlotFrame;
  /** The session's other slots; none for a plan posted whole. */
  readonly otherSlots: readonly OtherSlot[];
}

/** Another slot of the session, with all trains of its timetable version. */
export interface OtherSlot {
  readonly lengthMs: number;
  readonly layoutStartSeconds: number;
  readonly trains: readonly Train[];
}
