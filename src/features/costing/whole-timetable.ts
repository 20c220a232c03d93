import type { LayoutDocument } from "../../../shared/documents.ts";
import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { Control, SectionWiring } from "../../../shared/vocabulary.ts";
import { NO_CREW } from "../../database/records/read-crew.ts";
import type { ClubParts, PlanParts } from "../../database/records/read-plan.ts";

const SECONDS_AN_HOUR = 3_600;

/** A timetable version that no night need have booked. */
export interface TimetableAddress {
  readonly club: string;
  readonly timetable: string;
  readonly version: number;
}

export interface StoredTimetable {
  readonly common: ClubParts;
  readonly trains: readonly Train[];
  readonly timeZone: string;
}

/**
 * A whole timetable as one slot: from the pick-up for its first train to the hand-in of its last, whole minutes of the layout
 * clock. An area runs as most of its sections are wired, digital where as many are wired for either.
 */
export function toWholeSlot(
  { common, trains, timeZone }: StoredTimetable,
  { timetable, version }: TimetableAddress,
  clockRatio: number,
): PlanParts {
  const { layout, policy } = common;
  const [first, last] = spanOf(trains);
  const wholeMinute = (seconds: number, round: (n: number) => number) => 60 * round(seconds / 60);
  const from = Math.max(0, wholeMinute(first - policy.pickUpSeconds * clockRatio, Math.floor));
  const to = wholeMinute(last + policy.handInSeconds * clockRatio, Math.ceil);
  // without a date: only what lies between two instants is told
  const startsAt = new Date(0);
  return {
    ...common,
    trains: [...trains],
    crew: NO_CREW,
    otherSlots: [],
    slot: {
      code: timetable,
      name: timetable,
      startsAt,
      endsAt: new Date(Math.ceil(((to - from) / clockRatio) * 1_000)),
      sessionStartsAt: startsAt,
      layoutStartSeconds: from,
      clockRatio,
      areas: layout.areas.map(({ code }) => ({ area: code, control: controlOf(layout, code) })),
      timeZone,
      timetable,
      timetableVersion: version,
    },
  };
}

function controlOf({ sections }: LayoutDocument, of: string): Control {
  const wired = (wanted: SectionWiring) =>
    sections.filter(({ area, wiring }) => area === of && wiring === wanted).length;
  return wired("analog") > wired("digital") ? "analog" : "digital";
}

/** The first and the last layout second that trains say; an hour for a timetable that has none. */
function spanOf(trains: readonly Train[]): [first: number, last: number] {
  const seconds = trains
    .flatMap(({ placedAt, removedAt, path }) => [
      placedAt,
      removedAt,
      ...path.flatMap(({ arrive, depart }) => [arrive, depart]),
    ])
    .filter((time) => time !== null)
    .map(parseLayoutTime);
  if (seconds.length === 0) return [0, SECONDS_AN_HOUR];
  return seconds.reduce(([first, last], at) => [Math.min(first, at), Math.max(last, at)], [
    seconds[0] as number,
    seconds[0] as number,
  ] as [number, number]);
}
