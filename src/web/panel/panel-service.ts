import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import type { Session } from "../../../shared/sessions.ts";
import { change } from "../api/ask.ts";
import { readClub, readSession, sessionPath } from "../api/service.ts";

export interface SlotCodes {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

const slotPath = ({ club, session, slot }: SlotCodes) =>
  `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}`;

/** Where the schedule is as a sheet. */
export const sheetPath = (codes: SlotCodes) => `${slotPath(codes)}/selector-schedule.csv`;

/** All that the page shows. */
export interface Panel {
  readonly timeZone: string;
  readonly clubName: string;
  readonly night: Session;
  readonly schedule: SelectorSchedule;
}

export async function readPanel(codes: SlotCodes, signal: AbortSignal): Promise<Panel> {
  const { club, session } = codes;
  const [record, night, made] = await Promise.all([
    readClub(club, signal),
    readSession(club, session, signal),
    change<SelectorSchedule>("POST", `${slotPath(codes)}/selector-schedule`, { signal }),
  ]);
  return { timeZone: record.timeZone, clubName: record.name, night, schedule: made.value };
}
