import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import { toLocalText } from "../../lib/local-time.ts";

const HEADING = [
  "layout time",
  "real time",
  "section",
  "from",
  "to",
  "train",
  "reason",
  "may be made from",
  "may be made until",
];

/** A schedule as rows of cells, one a turn, by time; the heading first. Real times to the second, as the clocks of `zone` show them. */
export function toSheet({ moments }: SelectorSchedule, zone: string): string[][] {
  const rows = moments.flatMap(({ at, startsAt, turns }) =>
    turns.map(({ section, from, to, train, reason, mayFrom, mayTo }) => [
      at,
      startsAt === null ? "" : toLocalText(toSecond(startsAt), zone),
      section,
      from ?? "off",
      to ?? "off",
      train,
      reason,
      mayFrom,
      mayTo,
    ]),
  );
  return [HEADING, ...rows];
}

const toSecond = (instant: string) => new Date(Math.round(Date.parse(instant) / 1_000) * 1_000);
