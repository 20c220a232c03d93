import { describe, expect, it } from "vitest";
import { toInstant, toWall } from "../../../src/web/nights/zoned-time.ts";

describe("a time typed by the club room's clock", () => {
  // London keeps GMT in winter and BST, an hour ahead, in summer: Summer Time Act 1972, sections 1 and 2; it changes
  // at 1:00 GMT on the last Sundays of March and October: Summer Time Order 2002
  it.each([
    ["Europe/London", "2027-03-20T19:00", "2027-03-20T19:00:00.000Z"],
    ["Europe/London", "2027-03-28T00:30", "2027-03-28T00:30:00.000Z"],
    ["Europe/London", "2027-03-28T02:30", "2027-03-28T01:30:00.000Z"],
    ["Europe/London", "2027-07-01T19:00", "2027-07-01T18:00:00.000Z"],
    ["Europe/London", "2027-10-31T00:30", "2027-10-30T23:30:00.000Z"],
    ["Europe/London", "2027-10-31T02:30", "2027-10-31T02:30:00.000Z"],
    ["Asia/Kolkata", "2027-07-01T19:00", "2027-07-01T13:30:00.000Z"],
  ])("is the instant at which it shows so: %s, %s", (zone, wall, instant) => {
    expect(toInstant(wall, zone)).toBe(instant);
    expect(toWall(instant, zone)).toBe(wall);
  });

  it("is the first of an hour that comes twice", () => {
    expect(toInstant("2027-10-31T01:30", "Europe/London")).toBe("2027-10-31T00:30:00.000Z");
  });

  it("counts on where an hour is skipped", () => {
    expect(toInstant("2027-03-28T01:30", "Europe/London")).toBe("2027-03-28T01:30:00.000Z");
  });
});
