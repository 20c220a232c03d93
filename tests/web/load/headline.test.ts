import { describe, expect, it } from "vitest";
import type { CheckReport, LoadReport } from "../../../shared/check.ts";
import { answerLoad } from "../../../src/web/load/headline.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const report = fixtureReport(24);
const [plain] = report.districts;
if (!plain) throw new Error("the fixture has districts");

/** A feed of 1 A that draws 700 mA at its peak, and so much where one locomotive stalls. */
const feed = (name: string, stalledMa: number | null): LoadReport => ({
  ...plain,
  code: name,
  name,
  limitMa: 1_000,
  peakMa: 700,
  stall:
    stalledMa === null
      ? null
      : { ma: stalledMa, atMs: 60_000, atLayout: "10:04", locomotive: "E7", train: "T12" },
});
const sentenceFor = (feeds: Partial<CheckReport>) =>
  answerLoad({ ...report, districts: [], supplies: [], outputs: [], controllers: [], ...feeds }).sentence;

describe("the headline of currents", () => {
  it("says that nothing trips where nothing would, a stalled locomotive included", () => {
    expect(sentenceFor({ outputs: [feed("Output A", 1_000)], supplies: [feed("Booster", null)] })).toBe(
      "Nothing trips.",
    );
  });

  it("says which output a stalled locomotive would be too much for", () => {
    expect(sentenceFor({ outputs: [feed("Output A", 1_400)], districts: [feed("East", 900)] })).toBe(
      "Nothing trips as planned, but Output A would be overloaded if locomotive E7 of train T12 stalled at 10:04: 1.40 A of 1.00 A.",
    );
    expect(sentenceFor({ districts: [feed("East", 1_400)] })).toContain("District East would trip if");
  });

  it("lists them where there are several", () => {
    expect(sentenceFor({ outputs: [feed("Output A", 1_400)], districts: [feed("East", 1_100)] })).toBe(
      "Nothing trips as planned, but one locomotive that stalled would be too much for District East and Output A.",
    );
  });
});
