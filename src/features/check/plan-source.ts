import type { LayoutDocument, PlanSlot, RosterDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { SlotFrame } from "./clock.ts";

/** What a check is made from, stored or posted. */
export interface PlanSource {
  readonly scale: number;
  readonly policy: Policy;
  readonly layout: LayoutDocument;
  readonly roster: RosterDocument;
  readonly handsets: readonly Handset[];
  readonly trains: readonly Train[];
  readonly areas: PlanSlot["areas"];
  readonly frame: SlotFrame;
}
