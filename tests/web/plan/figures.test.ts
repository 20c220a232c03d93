import { describe, expect, it } from "vitest";
import { amps, duration, figureAgainstLimit } from "../../../src/web/plan/figures.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const [finding] = fixtureReport(24).findings;
if (!finding) throw new Error("the fixture has findings");
const told = (measured: number | null, limit: number | null, unit: typeof finding.unit) =>
  figureAgainstLimit({ ...finding, measured, limit, unit });

describe("figures as people read them", () => {
  it("say amperes from 1 A on and milliamperes below", () => {
    expect([amps(450), amps(999), amps(1_000), amps(2_905)]).toEqual([
      "450 mA",
      "999 mA",
      "1.00 A",
      "2.90 A",
    ]);
  });

  it("say seconds below a minute and minutes from there on", () => {
    expect([duration(1.25), duration(38), duration(120), duration(125)]).toEqual([
      "1.3 s",
      "38 s",
      "2 min",
      "2 min 5 s",
    ]);
  });

  it("set a measured figure against its limit in its own unit", () => {
    expect(told(3_120, 3_000, "mA")).toBe("3.12 A, limit 3.00 A");
    expect(told(3_001, 3_000, "mA")).toBe("3.001 A, limit 3.000 A");
    expect(told(0.75004, 0.75, "share")).toBe("75.004 %, limit 75.000 %");
    expect(told(1_450, 1_300, "mm")).toBe("1450 mm, limit 1300 mm");
    expect(told(2, 1, "trains")).toBe("2 trains, room for 1");
    expect(told(62_000, 0, "ms")).toBe("1 min 2 s of real time");
    expect(told(null, null, "none")).toBeNull();
  });
});
