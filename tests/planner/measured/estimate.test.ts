import fc from "fast-check";
import { expect, it } from "vitest";
import { estimateCurrent, robust } from "../../../src/planner/measured/estimate.ts";

// A worked example often given for the median absolute deviation (from memory): of 1, 1, 2, 2, 4, 6, 9 the median is 2 and
// the absolute deviations about it, 1, 1, 0, 0, 2, 4, 7, have the median 1. The method: NIST/SEMATECH e-Handbook, 1.3.5.6.
it("readings are summed up by their median and the scaled median of what they deviate from it", () => {
  expect(robust([1, 1, 2, 2, 4, 6, 9])).toEqual({ median: 2, spread: 1.4826, count: 7 });
});

it("without a reading there is nothing to sum up", () => {
  expect(robust([])).toBeNull();
});

it("one reading that is wildly wrong moves an estimate no farther than to another reading", () => {
  const roster = { ma: 500, source: "leaflet" } as const;
  expect(estimateCurrent(roster, [300, 310, 320, 9_000])).toMatchObject({ ma: 315, measured: true });
});

it("a figure nobody measured has a range by where it came from, wider the less it is worth", () => {
  const of = (source: "measured" | "leaflet" | "rule of thumb") => estimateCurrent({ ma: 400, source }, []);
  expect(of("measured")).toEqual({ ma: 400, lowMa: 360, highMa: 440, measured: true });
  expect(of("leaflet")).toEqual({ ma: 400, lowMa: 280, highMa: 520, measured: false });
  expect(of("rule of thumb")).toEqual({ ma: 400, lowMa: 200, highMa: 800, measured: false });
});

it("an estimate lies within its range, and its range above nothing", () => {
  const readings = fc.array(fc.integer({ min: 0, max: 20_000 }), { maxLength: 9 });
  const source = fc.constantFrom("measured", "leaflet", "rule of thumb");
  fc.assert(
    fc.property(fc.nat(20_000), source, readings, (ma, from, read) => {
      const { lowMa, highMa, ...found } = estimateCurrent({ ma, source: from }, read);
      expect(lowMa).toBeGreaterThanOrEqual(0);
      expect(lowMa).toBeLessThanOrEqual(found.ma);
      expect(highMa).toBeGreaterThanOrEqual(found.ma);
    }),
    { numRuns: 300 },
  );
});
