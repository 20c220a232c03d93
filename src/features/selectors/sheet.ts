import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";

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

/** A schedule as rows of cells, one a turn, by time; the heading first. */
export function toSheet({ moments }: SelectorSchedule): string[][] {
  const rows = moments.flatMap(({ at, startsAt, turns }) =>
    turns.map(({ section, from, to, train, reason, mayFrom, mayTo }) => [
      at,
      startsAt ?? "",
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
