import { describe, expect, it } from "vitest";
import {
  elapsedMs,
  isTimeZone,
  type Occurrence,
  resolveLocalTime,
  toLocalText,
} from "../../src/lib/local-time.ts";

// Clock changes of 2027, from the rules of the IANA time zone database:
// Europe/London   rule EU: forward 28 March, back 31 October, both at 01:00 UTC
// America/Nuuk    rule EU on a base of -02:00: forward at 01:00 UTC on 28 March, which is 23:00 on Saturday 27 March
// Australia/Lord_Howe  rule LH: back by 30 minutes at 02:00 on the first Sunday of April (4 April)
const instant = (zone: string, text: string, occurrence?: Occurrence): Date => {
  const [date = "", time = ""] = text.split(" ");
  const resolution = resolveLocalTime({ date, time }, zone, occurrence);
  if (resolution.kind !== "instant") throw new Error(`${text} in ${zone} is ${resolution.kind}`);
  return resolution.instant;
};

const resolve = (zone: string, date: string, time: string) => resolveLocalTime({ date, time }, zone);

describe("a night across a clock change lasts as long as it really does", () => {
  const H = 3_600_000;
  it.each([
    ["Europe/London", "2027-03-27 22:00", "2027-03-28 02:30", 3.5],
    ["Europe/London", "2027-10-30 19:00", "2027-10-31 02:00", 8],
    ["America/Nuuk", "2027-03-27 20:00", "2027-03-28 00:30", 3.5],
    ["Australia/Lord_Howe", "2027-04-03 20:00", "2027-04-04 02:00", 6.5],
    ["Europe/London", "2027-06-05 19:00", "2027-06-06 02:00", 7],
  ])("%s, %s to %s: %d hours", (zone, from, to, hours) => {
    expect(elapsedMs(instant(zone, from), instant(zone, to))).toBe(hours * H);
  });
});

describe("a time that the clocks skip", () => {
  it.each([
    ["Europe/London", "2027-03-28", "01:00", "01:00", "02:00"],
    ["Europe/London", "2027-03-28", "01:59:59", "01:00", "02:00"],
    ["America/Nuuk", "2027-03-27", "23:30", "23:00", "00:00"],
    // rule LH: forward by 30 minutes at 02:00 on the first Sunday of October (3 October 2027)
    ["Australia/Lord_Howe", "2027-10-03", "02:15", "02:00", "02:30"],
  ])("%s %s %s is refused, with the jump from %s to %s", (zone, date, time, from, to) => {
    expect(resolve(zone, date, time)).toEqual({ kind: "skipped", from, to });
  });

  it("is only the time inside the jump", () => {
    expect(instant("Europe/London", "2027-03-28 00:59:59").toISOString()).toBe("2027-03-28T00:59:59.000Z");
    expect(instant("Europe/London", "2027-03-28 02:00").toISOString()).toBe("2027-03-28T01:00:00.000Z");
  });
});

describe("a time that comes twice", () => {
  it.each([
    ["Europe/London", "2027-10-31", "01:30", "2027-10-31T00:30:00.000Z", "2027-10-31T01:30:00.000Z"],
    // summer is +11:00 there, winter +10:30
    ["Australia/Lord_Howe", "2027-04-04", "01:45", "2027-04-03T14:45:00.000Z", "2027-04-03T15:15:00.000Z"],
  ])("%s %s %s stands for two instants until told which", (zone, date, time, earlier, later) => {
    const twice = { kind: "repeated", earlier: new Date(earlier), later: new Date(later) };
    expect(resolve(zone, date, time)).toEqual(twice);
    expect(instant(zone, `${date} ${time}`, "earlier").toISOString()).toBe(earlier);
    expect(instant(zone, `${date} ${time}`, "later").toISOString()).toBe(later);
  });

  it("is only the time inside the repetition", () => {
    expect(resolve("Europe/London", "2027-10-31", "00:59:59").kind).toBe("instant");
    expect(resolve("Europe/London", "2027-10-31", "02:00").kind).toBe("instant");
  });
});

describe("local text", () => {
  it("carries the offset of its instant", () => {
    expect(toLocalText(new Date("2027-10-31T00:30:00Z"), "Europe/London")).toBe("2027-10-31T01:30:00+01:00");
    expect(toLocalText(new Date("2027-10-31T01:30:00Z"), "Europe/London")).toBe("2027-10-31T01:30:00+00:00");
  });

  it("goes back to the instant it came from", () => {
    for (const zone of ["Europe/London", "America/Nuuk", "Australia/Lord_Howe", "Asia/Kathmandu"]) {
      const text = toLocalText(new Date("2027-07-01T12:34:56Z"), zone);
      expect(instant(zone, `${text.slice(0, 10)} ${text.slice(11, 19)}`).toISOString()).toBe(
        "2027-07-01T12:34:56.000Z",
      );
    }
  });
});

describe("what is no time or no zone", () => {
  it.each([
    ["2027-02-30", "10:00"],
    ["2027-02-03", "25:00"],
    ["2027-02-03", "10:00Z"],
    ["", ""],
  ])("%s %s is invalid", (date, time) => {
    expect(resolve("Europe/London", date, time)).toEqual({ kind: "invalid" });
  });

  it.each([
    ["Europe/London", true],
    ["UTC", true],
    ["Europe/Atlantis", false],
    ["UTC+3", false],
    ["", false],
  ])("zone %s: %s", (zone, valid) => {
    expect(isTimeZone(zone)).toBe(valid);
  });
});
