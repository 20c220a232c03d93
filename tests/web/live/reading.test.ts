import { describe, expect, it } from "vitest";
import { faceOf, farOff, readingAfter, realMinutesTo } from "../../../src/web/live/reading.ts";

describe("the layout clock on the board", () => {
  it("goes on from what the service said, as fast as the ratio says", () => {
    // 22 real minutes at ten times as fast are 3 h 40 min: plain arithmetic
    const clock = { state: "running", layoutSeconds: 6 * 3_600, clockRatio: 10 } as const;
    expect(faceOf(readingAfter(clock, 22 * 60_000))).toEqual({ minutes: "09:40", seconds: ":00" });
  });

  it.each(["paused", "not started"] as const)("stands still while it is %s", (state) => {
    expect(readingAfter({ state, layoutSeconds: 1_000, clockRatio: 4 }, 3_600_000)).toBe(1_000);
  });

  it("shows the second that has begun and never one that has not", () => {
    expect(faceOf(37_979.99)).toEqual({ minutes: "10:32", seconds: ":59" });
    expect(faceOf(90_600)).toEqual({ minutes: "25:10", seconds: ":00" });
  });
});

describe("how far off a departure is", () => {
  it("is told in minutes of the room: 20 layout minutes at four times as fast are 5", () => {
    expect(realMinutesTo("10:20", 10 * 3_600, 4)).toBe(5);
    expect(realMinutesTo("9:40", 10 * 3_600, 4)).toBe(-5);
  });

  it("never promises a minute that is not whole", () => {
    expect(realMinutesTo("10:03:59", 10 * 3_600, 4)).toBe(0);
  });

  it.each([
    [2 * 1_440, "in 2 days"],
    [2 * 1_440 - 1, "in 47 h 59 min"],
    [130, "in 2 h 10 min"],
    [60, "in 1 h"],
    [5, "in 5 min"],
    [0, "now"],
    [-1, "now"],
    [-2, "2 min ago"],
  ])("%i minutes are said as %s", (minutes, text) => {
    expect(farOff(minutes)).toBe(text);
  });
});
