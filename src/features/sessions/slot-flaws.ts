import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { Session, Slot } from "../../../shared/sessions.ts";
import type { ClubScope } from "../../database/records/record-table.ts";
import { elapsedMs } from "../../lib/local-time.ts";
import { readWallTime } from "../../lib/wall-time.ts";
import { type Flaw, findRepeated } from "../../records/flaws.ts";
import type { Clash } from "../../records/record-kind.ts";
import { areaTwice, ENDS_BEFORE_START, pastLayoutClock, slotsOverlap, slotTwice } from "./errors.ts";

/** Layout hours that a slot must not run past: later times could not be written on a card. */
const LAST_LAYOUT_HOUR = 96;

/** What makes a session none, whatever else is stored. */
export function findSessionFlaws(session: Session, club: ClubScope): Flaw[] {
  const areas = findRepeated(session.areas.map(({ area }) => area));
  const slots = findRepeated(session.slots.map((slot) => slot.code));
  return [
    ...areas.map(({ at, entry }) => ({ path: ["areas", at, "area"], detail: areaTwice(entry) })),
    ...slots.map(({ at, entry }) => ({ path: ["slots", at, "code"], detail: slotTwice(entry) })),
    ...session.slots.flatMap((slot, at) =>
      findSlotFlaws(slot, session.clockRatio, club).map(({ path, detail }) => ({
        path: ["slots", at, ...path],
        detail,
      })),
    ),
  ];
}

function findSlotFlaws(slot: Slot, clockRatio: number, { timeZone }: ClubScope): Flaw[] {
  const start = readWallTime(slot.startsAt, timeZone);
  const end = readWallTime(slot.endsAt, timeZone);
  const flaws: Flaw[] = [];
  if ("fault" in start) flaws.push({ path: ["startsAt"], detail: start.fault });
  if ("fault" in end) flaws.push({ path: ["endsAt"], detail: end.fault });
  if ("fault" in start || "fault" in end) return flaws;
  const realMs = elapsedMs(start.instant, end.instant);
  if (realMs <= 0) return [{ path: ["endsAt"], detail: ENDS_BEFORE_START }];
  const layoutEnd = parseLayoutTime(slot.layoutStart) + (realMs / 1_000) * clockRatio;
  return layoutEnd > LAST_LAYOUT_HOUR * 3_600
    ? [{ path: ["endsAt"], detail: pastLayoutClock(LAST_LAYOUT_HOUR) }]
    : [];
}

interface PlacedSlot {
  readonly record: number;
  readonly at: number;
  readonly slot: Slot;
  readonly name: string;
  readonly startMs: number;
  readonly endMs: number;
}

/**
 * Slots of any of the sessions that overlap in real time, each named with one that it overlaps. Slots are half-open:
 * touching is not overlapping. Cost: n log n in the slots. The sessions must be without flaws.
 */
export function findOverlaps(sessions: readonly Session[], club: ClubScope): Clash[] {
  const slots = sessions.flatMap((session, record) =>
    session.slots.map((slot, at) => placeSlot(session, record, slot, at, club)),
  );
  slots.sort((a, b) => a.startMs - b.startMs || a.record - b.record || a.at - b.at);
  const clashes: Clash[] = [];
  let longest: PlacedSlot | undefined;
  for (const slot of slots) {
    if (longest && slot.startMs < longest.endMs) clashes.push(toClash(slot, longest), toClash(longest, slot));
    if (longest === undefined || slot.endMs > longest.endMs) longest = slot;
  }
  return clashes;
}

function placeSlot(
  session: Session,
  record: number,
  slot: Slot,
  at: number,
  { timeZone }: ClubScope,
): PlacedSlot {
  const ms = (text: string) => {
    const read = readWallTime(text, timeZone);
    return "fault" in read ? Number.NaN : read.instant.getTime();
  };
  const name = `slot ${slot.code} of session ${session.code}`;
  return { record, at, slot, name, startMs: ms(slot.startsAt), endMs: ms(slot.endsAt) };
}

const toClash = ({ record, at, slot }: PlacedSlot, other: PlacedSlot): Clash => ({
  record,
  path: ["slots", at, "startsAt"],
  detail: slotsOverlap(slot.code, other.name, other.slot.startsAt, other.slot.endsAt),
});
