import { describe, expect, it } from "vitest";
import { createClocks } from "../../../src/web/charts/clocks.ts";
import { layoutTicks, roomTicks, valueTicks } from "../../../src/web/charts/ticks.ts";

const HOUR = 3_600_000;
const clocks = createClocks({
  startMs: 0,
  layoutStart: "23:50",
  startsAt: "2027-03-27T19:00:00Z",
  clockRatio: 4,
  timeZone: "Europe/London",
});

describe("ticks of the layout clock", () => {
  it("stand at round readings, not at round stretches from the slot's start", () => {
    // 23:50 to 24:20 by the layout clock is 7.5 minutes of real time at ratio 4
    const ticks = layoutTicks({ fromMs: 0, toMs: 450_000 }, clocks, 4);
    expect(ticks.map(({ label }) => label)).toEqual(["23:50", "24:00", "24:10", "24:20"]);
    expect(ticks[1]?.at).toBe(150_000);
  });

  it("count on past midnight as the trade writes it", () => {
    const labels = layoutTicks({ fromMs: 0, toMs: HOUR }, clocks, 4).map(({ label }) => label);
    expect(labels).toEqual(["24:00", "25:00", "26:00", "27:00"]);
  });

  it("never come closer than asked, from seconds to days", () => {
    for (const toMs of [5_000, 60_000, HOUR, 12 * HOUR, 100 * HOUR])
      expect(layoutTicks({ fromMs: 0, toMs }, clocks, 6).length).toBeLessThanOrEqual(8);
  });
});

describe("ticks of the room clock", () => {
  it("show the club's wall clock, an hour on after the change to summer time", () => {
    // Directive 2000/84/EC and the UK's Summer Time Order 2002: on 28 March 2027 at 01:00 UTC clocks go to 02:00
    const labels = roomTicks({ fromMs: 4 * HOUR, toMs: 8 * HOUR }, clocks, 4).map(({ label }) => label);
    expect(labels).toEqual(["23:00", "00:00", "02:00", "03:00", "04:00"]);
  });
});

describe("ticks of values", () => {
  it("keep to whole numbers for things one counts", () => {
    expect(valueTicks(2, 4, true)).toEqual([0, 1, 2]);
    expect(valueTicks(1, 4, true)).toEqual([0, 1]);
  });

  it("start at 0 and stay within the top", () => {
    expect(valueTicks(3.12, 4)).toEqual([0, 1, 2, 3]);
  });
});
