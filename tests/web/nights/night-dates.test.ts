import { describe, expect, it } from "vitest";
import { slotDates } from "../../../src/web/nights/night-dates.ts";

const slot = (startsAt: string, endsAt: string) => ({
  code: "s",
  name: "Slot",
  startsAt,
  endsAt,
  layoutStart: "8:00",
  timetable: "t",
  timetableVersion: 1,
});

describe("a slot's date and hours", () => {
  it("are those of the club room's wall, wherever they are looked at", () => {
    const late = slot("2027-03-27T19:00:00Z", "2027-03-27T22:00:00Z");
    expect(slotDates(late, "Europe/London")).toEqual({
      weekday: "Saturday",
      date: "27 March 2027",
      hours: "19:00–22:00",
    });
    expect(slotDates(late, "Australia/Lord_Howe").weekday).toBe("Sunday");
  });

  it("skip the hour that the change to summer time skips", () => {
    // UK Summer Time Order 2002: 28 March 2027, 01:00 UTC
    const night = slot("2027-03-28T00:30:00Z", "2027-03-28T01:30:00Z");
    expect(slotDates(night, "Europe/London").hours).toBe("00:30–02:30");
  });
});
