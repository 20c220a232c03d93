import { describe, expect, it } from "vitest";
import { type Session, session } from "../../../shared/sessions.ts";
import {
  copyNight,
  dateInWords,
  datesOf,
  dateThere,
  firstNight,
  toSession,
} from "../../../src/web/nights/night-draft.ts";

const SLOT = { layoutStart: "6:40", timetable: "weekday", timetableVersion: 1 };

const night: Session = session.parse({
  code: "spring",
  name: "Spring night",
  clockRatio: 4,
  areas: [{ area: "main", control: "digital" }],
  slots: [
    {
      ...SLOT,
      code: "a",
      name: "Evening",
      startsAt: "2027-03-20T20:00+00:00",
      endsAt: "2027-03-21T00:30+00:00",
    },
    {
      ...SLOT,
      code: "b",
      name: "Late",
      startsAt: "2027-03-21T01:00+00:00",
      endsAt: "2027-03-21T02:00+00:00",
    },
  ],
  note: "Tea at ten.",
});

describe("a night copied", () => {
  const copy = toSession(copyNight(night, "2027-03-01"), new Set());

  it("is the same a week later, by the clock on the wall, over a change of the clocks and past midnight", () => {
    // clocks go forward on 28 March 2027, the last Sunday of March (Directive 2000/84/EC, article 2)
    expect(copy.slots.map(({ startsAt, endsAt }) => [startsAt, endsAt])).toEqual([
      ["2027-03-27T20:00", "2027-03-28T00:30"],
      ["2027-03-28T01:00", "2027-03-28T02:00"],
    ]);
  });

  it("keeps all but its dates, code and name", () => {
    expect({ ...copy, code: "", name: "", slots: [] }).toEqual({ ...night, code: "", name: "", slots: [] });
    expect(copy.slots.map(({ startsAt, endsAt, ...slot }) => slot)).toEqual(
      night.slots.map(({ startsAt, endsAt, ...slot }) => slot),
    );
    expect(session.safeParse(copy).success).toBe(true);
  });

  it("is called by its date, and by a number where that date is taken", () => {
    expect(copy.name).toBe("Saturday 27 March 2027");
    const draft = copyNight(night, "2027-03-01");
    expect(toSession(draft, new Set(["2027-03-27"])).code).toBe("2027-03-27-2");
    expect(toSession(draft, new Set(["2027-03-27", "2027-03-27-2"])).code).toBe("2027-03-27-3");
    expect(toSession({ ...draft, name: "Gala" }, new Set()).name).toBe("Gala");
  });

  it("does not fall on a date that has a night already", () => {
    const next = { ...night, slots: copy.slots };
    expect(copyNight(night, "2027-03-01", datesOf([night, next])).date).toBe("2027-04-03");
  });

  it("falls on the same weekday, today at the earliest, however long ago the first was", () => {
    for (const today of ["2027-04-17", "2027-04-18", "2027-12-31", "2028-02-29"]) {
      const { date } = copyNight(night, today);
      expect(dateInWords(date)).toMatch(/^Saturday /);
      expect(date >= today).toBe(true);
      expect(Date.parse(date) - Date.parse(today)).toBeLessThan(7 * 86_400_000);
    }
  });
});

describe("a first night", () => {
  it("is on the coming Friday evening and can be stored as it is", () => {
    const draft = firstNight("2027-03-26", ["main", "branch"], { code: "weekday", version: 3 });
    expect(dateInWords(draft.date)).toBe("Friday 2 April 2027");
    const made = session.parse(toSession(draft, new Set()));
    expect(made.areas).toHaveLength(2);
    expect(made.slots[0]).toMatchObject({ timetable: "weekday", timetableVersion: 3 });
  });
});

describe("today", () => {
  it("is the club room's date, not this device's", () => {
    const instant = new Date("2027-03-27T23:30:00Z");
    expect(dateThere(instant, "Europe/London")).toBe("2027-03-27");
    expect(dateThere(instant, "Europe/Berlin")).toBe("2027-03-28");
  });
});
