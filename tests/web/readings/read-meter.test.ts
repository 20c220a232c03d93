import { describe, expect, it } from "vitest";
import { readMeter } from "../../../src/web/readings/read-meter.ts";

describe("what somebody wrote down of a meter", () => {
  it.each([
    ["320", 320],
    [" 320 ", 320],
    ["0", 0],
    ["100000", 100_000],
  ])("%j is a number of mA", (text, ma) => {
    expect(readMeter(text)).toEqual({ ma });
  });

  it.each(["", "   ", "none", "-5", "1e3", "0x10", "100001", "12 5"])("%j is none", (text) => {
    expect(readMeter(text)).toEqual({
      fault: "Write what the meter showed as a whole number of mA, 0 to 100000: 320.",
    });
  });

  it("in amps is told in mA", () => {
    expect(readMeter("0,32")).toEqual({ fault: expect.stringContaining("0,32 A would be 320.") });
    expect(readMeter("1.2")).toEqual({ fault: expect.stringContaining("1.2 A would be 1200.") });
  });
});
