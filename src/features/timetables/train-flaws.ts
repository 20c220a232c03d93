import { LAST_LAYOUT_SECOND, parseLayoutTime } from "../../../shared/layout-time.ts";
import type { PathEntry, Train } from "../../../shared/timetable.ts";
import { indexLinks, joins } from "../../planner/path/links.ts";
import { type Flaw, findRepeated } from "../../records/flaws.ts";
import {
  BOTH_OR_NEITHER,
  ENDS_WITH_ARRIVAL,
  NO_LENGTH,
  notLinked,
  STARTS_WITH_DEPARTURE,
  stockTwice,
  TOO_LATE,
  timeBackwards,
} from "./errors.ts";

/** What makes a train no train at all, whatever the railway: no such thing is ever stored. */
export function findTrainFlaws(train: Train): Flaw[] {
  const flaws: Flaw[] = [];
  findRepeated(train.motivePower.map((power) => power.locomotive)).forEach(({ at, entry }) => {
    flaws.push({ path: ["motivePower", at, "locomotive"], detail: stockTwice(entry) });
  });
  findRepeated(train.rakes).forEach(({ at, entry }) => {
    flaws.push({ path: ["rakes", at], detail: stockTwice(entry) });
  });
  if (train.lengthMm === null && train.motivePower.length + train.rakes.length === 0)
    flaws.push({ path: ["lengthMm"], detail: NO_LENGTH });
  flaws.push(...findLateTime(train.placedAt, ["placedAt"]), ...findLateTime(train.removedAt, ["removedAt"]));
  train.path.forEach((entry, at) => {
    flaws.push(...findMissingTime(entry, at, train.path.length - 1));
    flaws.push(...findLateTime(entry.arrive, ["path", at, "arrive"]));
    flaws.push(...findLateTime(entry.depart, ["path", at, "depart"]));
  });
  return flaws;
}

function findLateTime(time: string | null, path: Flaw["path"]): Flaw[] {
  const late = time !== null && parseLayoutTime(time) > LAST_LAYOUT_SECOND;
  return late ? [{ path, detail: TOO_LATE }] : [];
}

function findMissingTime({ arrive, depart }: PathEntry, at: number, last: number): Flaw[] {
  if (at === 0)
    return depart === null ? [{ path: ["path", at, "depart"], detail: STARTS_WITH_DEPARTURE }] : [];
  if (at === last)
    return arrive === null ? [{ path: ["path", at, "arrive"], detail: ENDS_WITH_ARRIVAL }] : [];
  if ((arrive === null) === (depart === null)) return [];
  return [{ path: ["path", at, arrive === null ? "arrive" : "depart"], detail: BOTH_OR_NEITHER }];
}

/** Times that do not follow those before them; between two calls some time must pass. */
export function findBackwardsTimes({ path }: Train): Flaw[] {
  const flaws: Flaw[] = [];
  let before: string | null = null;
  path.forEach(({ arrive, depart }, at) => {
    for (const [field, time] of [["arrive", arrive] as const, ["depart", depart] as const]) {
      if (time === null) continue;
      // a pass departs when it arrives; a run to the next call takes time
      const moves = field === "arrive" || arrive === null;
      if (before !== null && isBackwards(before, time, moves))
        flaws.push({ path: ["path", at, field], detail: timeBackwards(time, before) });
      before = time;
    }
  });
  return flaws;
}

function isBackwards(before: string, time: string, moves: boolean): boolean {
  const passed = parseLayoutTime(time) - parseLayoutTime(before);
  return passed < 0 || (passed === 0 && moves);
}

interface Link {
  readonly from: string;
  readonly to: string;
  readonly oneWay: boolean;
}

const NAMED_AT_MOST = 6;

/** Sections of the path that no link joins to the one before; the same section again is a reversal. */
export function findUnlinkedSections({ path }: Train, links: readonly Link[]): Flaw[] {
  const index = indexLinks(links);
  return path.flatMap(({ section }, at) => {
    const from = path[at - 1]?.section;
    if (from === undefined || from === section || joins(index, from, section)) return [];
    return [{ path: ["path", at, "section"], detail: notLinked(from, section, reachableFrom(from, links)) }];
  });
}

function reachableFrom(from: string, links: readonly Link[]): string[] {
  const ahead = links.flatMap((link) => {
    if (link.from === from) return [link.to];
    return link.to === from && !link.oneWay ? [link.from] : [];
  });
  return [...new Set(ahead)].sort().slice(0, NAMED_AT_MOST);
}
