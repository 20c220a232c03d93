import { expect, it } from "vitest";
import { readWallTime } from "../../src/lib/wall-time.ts";

// IANA time zone database, rule EU: Europe/London changes at 01:00 UTC on 2027-03-28 and 2027-10-31
it.each([
  ["2027-03-27T19:00", "2027-03-27T19:00:00.000Z"],
  ["2027-03-27T19:00:30", "2027-03-27T19:00:30.000Z"],
  ["2027-03-27T19:00+00:00", "2027-03-27T19:00:00.000Z"],
  ["2027-03-27T19:00Z", "2027-03-27T19:00:00.000Z"],
  ["2027-03-28T02:00", "2027-03-28T01:00:00.000Z"],
  ["2027-03-28T00:59:59", "2027-03-28T00:59:59.000Z"],
  ["2027-10-31T01:30+01:00", "2027-10-31T00:30:00.000Z"],
  ["2027-10-31T01:30Z", "2027-10-31T01:30:00.000Z"],
  ["2027-10-31T02:00", "2027-10-31T02:00:00.000Z"],
])("in London %s is %s", (text, instant) => {
  expect(readWallTime(text, "Europe/London")).toEqual({ instant: new Date(instant) });
});

it.each([
  ["2027-03-28T01:00", "from 01:00 to 02:00"],
  ["2027-03-28T01:30+01:00", "never comes"],
  ["2027-10-31T01:00", "twice"],
  ["2027-10-31T01:30+02:00", "write 2027-10-31T01:30:00+01:00 or 2027-10-31T01:30:00+00:00"],
  ["2027-07-01T12:00Z", "write 2027-07-01T12:00:00+01:00, or no offset"],
  ["2027-04-31T12:00", "The calendar has no 2027-04-31"],
  ["2027-04-30T24:30", "The calendar has no"],
  ["0000-01-01T12:00", "The calendar has no"],
])("in London %s is refused: %s", (text, says) => {
  expect(readWallTime(text, "Europe/London")).toEqual({ fault: expect.stringContaining(says) });
});
