import type { Attendance, NightHandset } from "../../../shared/night.ts";
import type { HandsetKind } from "../../../shared/vocabulary.ts";
import type * as rows from "../../database/generated/client.ts";
import { batteryLeftMs } from "../../planner/night/battery.ts";
import { type NightFacts, toPerson } from "./facts.ts";

const MINUTE_MS = 60_000;

/** Every handset of the club, and where it is. */
export function toHandsets(facts: NightFacts): NightHandset[] {
  return facts.handsets.map((handset) => toHandset(facts, handset));
}

export function toHandset(facts: NightFacts, handset: rows.Handset): NightHandset {
  const stays = facts.log.handsets.filter(({ handsetCode }) => handsetCode === handset.code);
  const stay = stays.find(({ until }) => until === null);
  return {
    code: handset.code,
    name: handset.name,
    kind: handset.kind as HandsetKind,
    state: (stay?.state ?? (handset.state === "ready" ? "in" : handset.state)) as NightHandset["state"],
    holder: stay?.memberCode ? toPerson(facts, stay.memberCode) : null,
    since: (stay?.since ?? stays.at(-1)?.until)?.toISOString() ?? null,
    batteryMinutes: handset.batteryMinutes,
    batteryLeftMinutes:
      handset.batteryMinutes === null ? null : batteryLeft(stays, handset.batteryMinutes, facts.now),
  };
}

/** One that was flat and is in again has been charged; flat, it has nothing left. */
function batteryLeft(stays: readonly rows.NightHandset[], chargeMinutes: number, now: Date): number {
  const flat = stays.findLast(({ state }) => state === "flat");
  if (flat?.until === null) return 0;
  const inHands = stays
    .filter(({ state, since }) => state === "out" && (!flat?.until || since >= flat.until))
    .map(({ since, until }) => ({ fromMs: since.getTime(), toMs: (until ?? now).getTime() }));
  return Math.floor(batteryLeftMs(chargeMinutes * MINUTE_MS, inHands) / MINUTE_MS);
}

/** Who is here, has been, or is expected; by name. */
export function toAttendances(facts: NightFacts): Attendance[] {
  const { crew, log } = facts;
  const codes = new Set([...crew.expected, ...log.attendances.map(({ memberCode }) => memberCode)]);
  return [...codes]
    .map((member) => toAttendance(facts, member))
    .sort((a, b) => a.name.localeCompare(b.name, "en") || (a.member < b.member ? -1 : 1));
}

export function toAttendance(facts: NightFacts, member: string): Attendance {
  const stays = facts.log.attendances.filter(({ memberCode }) => memberCode === member);
  const open = stays.find(({ until }) => until === null);
  return {
    ...toPerson(facts, member),
    junior: facts.members.get(member)?.junior ?? false,
    expected: facts.crew.expected.includes(member),
    here: open !== undefined,
    since: (open?.since ?? stays.at(-1)?.until)?.toISOString() ?? null,
  };
}
