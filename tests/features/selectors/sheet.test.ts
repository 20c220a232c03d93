import { expect, it } from "vitest";
import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import { toSheet } from "../../../src/features/selectors/sheet.ts";

it("has the time that the clock on the wall shows, to the second", () => {
  const turn = {
    section: "B1",
    from: null,
    to: "A",
    train: "2B01",
    reason: "runs",
    mayFrom: "08:00",
    mayTo: "08:01",
  };
  const moments = [{ at: "08:00", startsAt: "2027-07-10T18:08:25.400Z", turns: [turn] }];
  // British Summer Time is an hour ahead of UTC in July (IANA time zone database)
  const [, row] = toSheet({ moments } as unknown as SelectorSchedule, "Europe/London");
  expect(row).toEqual([
    "08:00",
    "2027-07-10T19:08:25+01:00",
    "B1",
    "off",
    "A",
    "2B01",
    "runs",
    "08:00",
    "08:01",
  ]);
});
