import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createClocks } from "../../../src/web/charts/clocks.ts";

const setting = {
  startMs: 0,
  layoutStart: "8:00",
  startsAt: "2027-03-27T19:00:00Z",
  clockRatio: 4,
  timeZone: "Europe/London",
};

describe("the two clocks", () => {
  it("run apart by the clock ratio: a quarter of an hour in the room is an hour on the layout", () => {
    const clocks = createClocks(setting);
    expect(clocks.layoutText(15 * 60_000)).toBe("09:00");
    expect(clocks.roomText(15 * 60_000)).toBe("19:15:00");
  });

  it("start from a slot that begins later in the session", () => {
    const clocks = createClocks({ ...setting, startMs: 7_200_000, startsAt: "2027-03-27T21:00:00Z" });
    expect(clocks.layoutText(7_200_000)).toBe("08:00");
    expect(clocks.roomText(7_201_000)).toBe("21:00:01");
  });

  it("count from the start where a plan has no date", () => {
    const clocks = createClocks({ ...setting, startsAt: null });
    expect(clocks.roomText(5_132_000)).toBe("+1:25:32");
    expect(clocks.roomText(-60_000)).toBe("−0:01:00");
  });

  it("come back to the same layout second, for any ratio and any moment", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 60, noNaN: true }),
        fc.integer({ min: 0, max: 100_000 }),
        (clockRatio, seconds) => {
          const clocks = createClocks({ ...setting, clockRatio });
          return Math.round(clocks.toLayoutSeconds(clocks.toMs(seconds))) === seconds;
        },
      ),
    );
  });

  it("snap a moment to what an address can hold, and snapping again changes nothing", () => {
    fc.assert(
      fc.property(fc.integer({ min: -600_000, max: 50_000_000 }), (ms) => {
        const clocks = createClocks(setting);
        const snapped = clocks.snap(ms);
        return clocks.snap(snapped) === snapped && Math.abs(snapped - ms) <= 125;
      }),
    );
  });
});
