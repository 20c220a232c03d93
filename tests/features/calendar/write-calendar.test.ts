import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { type CalendarEvent, writeCalendar } from "../../../src/features/calendar/write-calendar.ts";
import { resolveLocalTime } from "../../../src/lib/local-time.ts";

const event = (change: Partial<CalendarEvent>): CalendarEvent => ({
  uid: "0193-a",
  sequence: 1,
  changedAt: new Date("2027-01-02T03:04:05Z"),
  startsAt: new Date("2027-03-20T19:00:00Z"),
  endsAt: new Date("2027-03-20T22:00:00Z"),
  summary: "March night",
  location: "",
  description: "",
  ...change,
});

const write = (change: Partial<CalendarEvent>) => writeCalendar("Northfold", [event(change)]);
const octets = (line: string) => Buffer.byteLength(line, "utf8");
const linesOf = (text: string) => text.split("\r\n").slice(0, -1);

/** The physical lines of one content line. */
function folded(text: string, property: string): string[] {
  const lines = linesOf(text);
  const from = lines.findIndex((line) => line.startsWith(`${property}:`));
  const rest = lines.slice(from + 1);
  const more = rest.findIndex((line) => !line.startsWith(" "));
  return [String(lines[from]), ...rest.slice(0, more)];
}

/** Read with a library that shares no code with the one that writes. */
function read(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const events = calendar.getAllSubcomponents("vevent").map((component) => new ICAL.Event(component));
  return { calendar, events, first: events[0] as ICAL.Event };
}

describe("a calendar file", () => {
  it("folds lines at 75 octets and never within a character (RFC 5545, section 3.1)", () => {
    // "SUMMARY:" is 8 octets and é 2: 33 of them make 74, and the 34th would pass 75; the other 7 follow a space
    expect(folded(write({ summary: "é".repeat(40) }), "SUMMARY").map(octets)).toEqual([74, 15]);
    const text = write({
      summary: "🚂".repeat(60),
      location: `a${"é".repeat(200)}`,
      description: "x".repeat(1_000),
    });
    expect(linesOf(text).every((line) => octets(line) <= 75)).toBe(true);
    expect(linesOf(text).every((line) => !line.includes("\ufffd"))).toBe(true);
    expect(folded(text, "DESCRIPTION").join("").replaceAll(" ", "")).toBe(`DESCRIPTION:${"x".repeat(1_000)}`);
    expect(read(text).first).toMatchObject({ summary: "🚂".repeat(60), description: "x".repeat(1_000) });
  });

  it("ends every line with CR and LF, the last one too", () => {
    const text = write({ description: "one\ntwo\r\nthree" });
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
  });

  it("escapes what would end or divide a text (section 3.3.11), and is read back the same", () => {
    const hard = "Yard; west, C:\\road\nsecond line";
    const text = write({ summary: hard.replace("\n", " "), location: hard, description: hard });
    expect(text).toContain("LOCATION:Yard\\; west\\, C:\\\\road\\nsecond line\r\n");
    expect(read(text).first).toMatchObject({ location: hard, description: hard });
  });

  it("lets no text smuggle in a line of its own", () => {
    const text = write({ summary: "x\r\nBEGIN:VALARM\r\nEND:VALARM", location: "a\rATTENDEE:mailto:x" });
    expect(linesOf(text).filter((line) => /^(BEGIN:VALARM|ATTENDEE)/.test(line))).toEqual([]);
  });

  it("says what RFC 5545 requires of an event, and RFC 7986 of a calendar that is subscribed to", () => {
    const lines = linesOf(write({ sequence: 3 }));
    expect(lines.slice(0, 2)).toEqual(["BEGIN:VCALENDAR", "VERSION:2.0"]);
    expect(lines).toEqual(
      expect.arrayContaining([
        "NAME:Northfold",
        "REFRESH-INTERVAL;VALUE=DURATION:PT1H",
        "UID:0193-a@running-foreman",
        "SEQUENCE:3",
        "DTSTAMP:20270102T030405Z",
        "DTSTART:20270320T190000Z",
        "DTEND:20270320T220000Z",
      ]),
    );
    expect(lines.some((line) => line.startsWith("PRODID:"))).toBe(true);
  });

  it("of no event at all is one that can be read", () => {
    expect(read(writeCalendar("Empty", [])).events).toEqual([]);
  });

  // IANA time zone data: the clocks of Europe/London go forward on 28 March and back on 31 October 2027 at 01:00 UTC;
  // in America/Nuuk the gap falls into the evening, and Australia/Lord_Howe changes by half an hour
  it.each([
    ["Europe/London", "2027-03-27", "22:00", "2027-03-28", "02:30", 3.5],
    ["Europe/London", "2027-10-30", "19:00", "2027-10-31", "02:00", 8],
    ["America/Nuuk", "2027-03-27", "20:00", "2027-03-28", "00:30", 3.5],
    ["Australia/Lord_Howe", "2027-04-03", "20:00", "2027-04-04", "02:00", 6.5],
  ])(
    "keeps the length of a night over a change of the clocks: %s, %s",
    (zone, day, from, next, to, hours) => {
      const at = (date: string, time: string) => {
        const found = resolveLocalTime({ date, time }, zone, "later");
        if (found.kind !== "instant") throw new Error(`${date} ${time} is ${found.kind}`);
        return found.instant;
      };
      const { first } = read(write({ startsAt: at(day, from), endsAt: at(next, to) }));
      expect(first.endDate.subtractDate(first.startDate).toSeconds()).toBe(hours * 3_600);
      expect(first.startDate.toJSDate()).toEqual(at(day, from));
      expect(first.endDate.toJSDate()).toEqual(at(next, to));
    },
  );
});
