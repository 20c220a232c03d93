import type { SlotBlock } from "../../../shared/booking.ts";
import type { CheckReport } from "../../../shared/check.ts";
import type { BookedNight, SlotManning } from "../../database/bookings.ts";
import { Refusal } from "../../lib/refusal.ts";
import { isDraft, isUnfit, nightStopped, nightUnfit } from "./errors.ts";

/** Checks a stored slot; handed in, as the check is another feature's. */
export type CheckSlot = (address: {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}) => Promise<Pick<CheckReport, "findings">>;

/** What stands in the way of opening a night, slot by slot. */
export async function findBlocks(
  checkSlot: CheckSlot,
  night: BookedNight,
  slots: readonly SlotManning[],
): Promise<SlotBlock[]> {
  const blocks: SlotBlock[] = [];
  for (const slot of slots) {
    const unfit = slot.issued ? [] : [isDraft(slot.timetable, slot.timetableVersion)];
    try {
      const report = await checkSlot({ club: night.club.code, session: night.code, slot: slot.slot });
      const stops = report.findings.filter(({ severity }) => severity === "stops");
      blocks.push({ slot: slot.slot, stops, unfit });
    } catch (error) {
      if (!(error instanceof Refusal) || error.code === "not-found") throw error;
      blocks.push({ slot: slot.slot, stops: [], unfit: [...unfit, isUnfit(error.message)] });
    }
  }
  return blocks;
}

/**
 * Returns whether something stops the night that the reason excuses.
 * @throws Refusal night-stopped
 */
export function assertMayOpen(blocks: readonly SlotBlock[], reason: string | undefined): boolean {
  for (const { slot, unfit } of blocks) {
    const [first] = unfit;
    if (first !== undefined) throw nightUnfit(slot, first);
  }
  const stops = blocks.flatMap(({ slot, stops }) => stops.map(({ sentence }) => ({ slot, sentence })));
  if (stops.length > 0 && reason === undefined) throw nightStopped(stops);
  return stops.length > 0;
}
