import { describe, expect, it } from "vitest";
import type { CheckReport, FindingReport } from "../../../shared/check.ts";
import { FINDING_CODES } from "../../../shared/vocabulary.ts";
import { compareReports } from "../../../src/features/what-if/compare.ts";

const NOTHING: Omit<FindingReport, "code"> = {
  span: { startMs: 0, endMs: 1, layoutStart: "", layoutEnd: "", startsAt: null, endsAt: null },
  severity: "stops",
  sentence: "",
  cure: "",
  atMs: 0,
  trains: [],
  sections: [],
  districts: [],
  supplies: [],
  outputs: [],
  controllers: [],
  commandSystems: [],
  locomotives: [],
  rakes: [],
  members: [],
  handsets: [],
  measured: null,
  limit: null,
  unit: "none",
  overSeconds: null,
  shares: [],
  pathEntry: null,
  needed: null,
};

const finding = (given: Partial<FindingReport> & Pick<FindingReport, "code">): FindingReport => ({
  ...NOTHING,
  ...given,
});

const report = (...findings: FindingReport[]) => ({ findings }) as unknown as CheckReport;
const compare = (before: FindingReport[], after: FindingReport[]) =>
  compareReports(report(...before), report(...after));

describe("what two checks differ in", () => {
  it.each<[string, FindingReport, FindingReport]>([
    [
      "a second address used twice in one command system",
      finding({
        code: "address-used-twice",
        commandSystems: ["C"],
        locomotives: ["a", "b"],
        measured: 3,
        unit: "address",
      }),
      finding({
        code: "address-used-twice",
        commandSystems: ["C"],
        locomotives: ["c", "d"],
        measured: 7,
        unit: "address",
      }),
    ],
    [
      "a second address that the system refuses",
      finding({
        code: "address-refused",
        commandSystems: ["C"],
        locomotives: ["a"],
        measured: 200,
        unit: "address",
      }),
      finding({
        code: "address-refused",
        commandSystems: ["C"],
        locomotives: ["b"],
        measured: 200,
        unit: "address",
      }),
    ],
    [
      "a second train without a usable handset",
      finding({ code: "handset-none-usable", commandSystems: ["C"], trains: ["1"] }),
      finding({ code: "handset-none-usable", commandSystems: ["C"], trains: ["2"] }),
    ],
    [
      "a second clash of the same two trains in one section",
      finding({ code: "section-clash", sections: ["S"], trains: ["1", "2"], atMs: 1_000 }),
      finding({ code: "section-clash", sections: ["S"], trains: ["1", "2"], atMs: 9_000 }),
    ],
    [
      "what warned and now stops",
      finding({ code: "handset-not-ready", trains: ["1"], severity: "warns" }),
      finding({ code: "handset-not-ready", trains: ["1"], severity: "stops" }),
    ],
  ])("names %s as new, whichever comes first", (_, old, added) => {
    expect(compare([old], [old, added])).toEqual({ appears: [added], clears: [] });
    expect(compare([old], [added, old])).toEqual({ appears: [added], clears: [] });
    expect(compare([old, added], [old])).toEqual({ appears: [], clears: [added] });
  });

  it.each<[string, FindingReport, FindingReport]>([
    [
      "a district that trips by another peak of other trains",
      finding({
        code: "district-will-trip",
        districts: ["D"],
        trains: ["1"],
        measured: 2_500,
        unit: "mA",
        atMs: 5,
      }),
      finding({
        code: "district-will-trip",
        districts: ["D"],
        trains: ["2"],
        measured: 2_600,
        unit: "mA",
        atMs: 9,
      }),
    ],
    [
      "too few handsets, at another time for other trains",
      finding({
        code: "handsets-too-few",
        commandSystems: ["C"],
        trains: ["1", "2"],
        measured: 2,
        unit: "handsets",
      }),
      finding({
        code: "handsets-too-few",
        commandSystems: ["C"],
        trains: ["2", "3", "4"],
        measured: 3,
        unit: "handsets",
      }),
    ],
    [
      "a train that is too fast by another speed",
      finding({ code: "path-too-fast", trains: ["1"], sections: ["S"], measured: 62, unit: "km/h" }),
      finding({ code: "path-too-fast", trains: ["1"], sections: ["S"], measured: 64, unit: "km/h" }),
    ],
  ])("takes %s for the same", (_, one, other) => {
    expect(compare([one], [other])).toEqual({ appears: [], clears: [] });
  });

  it("adds up: what there was, less what clears, with what appears, is what there is", () => {
    const some = FINDING_CODES.flatMap((code) => [finding({ code }), finding({ code, trains: ["1"] })]);
    const others = FINDING_CODES.flatMap((code) => [
      finding({ code, trains: ["2"] }),
      finding({ code, atMs: 7 }),
      finding({ code, trains: ["1"], measured: 4 }),
    ]);
    const { appears, clears } = compare(some, others);
    expect(some.length - clears.length + appears.length).toBe(others.length);
    expect(appears.length).toBeGreaterThan(0);
  });
});
