import type { CheckReport } from "../../../shared/check.ts";
import type { Locomotive } from "../../../shared/roster.ts";
import type { Session } from "../../../shared/sessions.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { KeepAnswer, TryAnswer, TryStep } from "../../../shared/what-if.ts";
import { change } from "../api/ask.ts";
import { checkSlot, clubPath, readClub, readSession, sessionPath } from "../api/service.ts";
import { readAll } from "../nights/night-records.ts";

export interface SlotCodes {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

const tryPath = ({ club, session, slot }: SlotCodes) =>
  `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/try`;

/** The slot with what is tried; nothing is stored. */
export async function trySlot(
  codes: SlotCodes,
  steps: readonly TryStep[],
  signal: AbortSignal,
): Promise<TryAnswer> {
  return (await change<TryAnswer>("POST", tryPath(codes), { body: { steps }, signal })).value;
}

/** Keeps what was tried as a draft of the timetable. */
export async function keepTry(codes: SlotCodes, steps: readonly TryStep[], note: string, key: string) {
  return (await change<KeepAnswer>("POST", `${tryPath(codes)}/keep`, { body: { steps, note }, key })).value;
}

/** All that the page starts from. */
export interface Start {
  readonly timeZone: string;
  readonly clubName: string;
  readonly night: Session;
  readonly report: CheckReport;
  /** Those of the timetable that run in the slot, in the order of their departure. */
  readonly trains: readonly Train[];
  readonly locomotives: readonly Locomotive[];
}

export async function readStart(codes: SlotCodes, signal: AbortSignal): Promise<Start> {
  const { club, session, slot } = codes;
  const [record, night, report, locomotives] = await Promise.all([
    readClub(club, signal),
    readSession(club, session, signal),
    checkSlot(codes, signal),
    readAll<Locomotive>(`${clubPath(club)}/locomotives`, signal),
  ]);
  const here = night.slots.find(({ code }) => code === slot);
  const versions = `${clubPath(club)}/timetables/${encodeURIComponent(here?.timetable ?? "")}/versions`;
  const stored = here ? await readAll<Train>(`${versions}/${here.timetableVersion}/trains`, signal) : [];
  const byCode = new Map(stored.map((train) => [train.code, train]));
  return {
    timeZone: record.timeZone,
    clubName: record.name,
    night,
    report,
    trains: report.trains.flatMap(({ code }) => byCode.get(code) ?? []),
    locomotives,
  };
}
