import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { section, smallProblem, train } from "../small-problem.ts";

/** Scale speed, km/h, that the check finds for a run of `mm` in `ms`: it is above the limit of 1 km/h, so it is reported. */
function scaleKmh(scale: number, mm: number, ms: number): number {
  const problem = smallProblem({
    scale,
    sections: [section("A", 1_000), section("B", mm, { maxSpeedKmh: 1 })],
    trains: [
      train("T", 500, [
        { section: 0, arriveMs: null, departMs: 0 },
        { section: 1, arriveMs: ms, departMs: null },
      ]),
    ],
  });
  const found = check(problem).findings.find((f) => f.code === "path-too-fast");
  return found?.measured ?? Number.NaN;
}

// 60 mph = 26.8224 m/s: the mile of 1609.344 m of 1959 (from memory)
const SIXTY_MPH_KMH = 96.560_64;

// Ratios: MOROP NEM 010 (2011); HO 87.1 and O 48: NMRA S-1.2 (3.5 mm to the foot, and 1/4 inch); British N: common practice;
// OO 4 mm and O 7 mm to the foot: from memory. Speeds are calculated from the ratios.
const SCALES: [name: string, ratio: number, sixtyMph: number, hundredKmh: number, scaleMileM: number][] = [
  ["Z", 220, 121.92, 126.26, 7.315],
  ["N", 160, 167.64, 173.61, 10.058],
  ["N (British)", 148, 181.23, 187.69, 10.874],
  ["TT", 120, 223.52, 231.48, 13.411],
  ["H0", 87, 308.3, 319.28, 18.498],
  ["HO", 87.1, 307.95, 318.92, 18.477],
  ["OO", 76.2, 352.0, 364.54, 21.12],
  ["S", 64, 419.1, 434.03, 25.146],
  ["0", 45, 596.05, 617.28, 35.763],
  ["O", 48, 558.8, 578.7, 33.528],
  ["O (7 mm)", 43.543, 616.0, 637.94, 36.96],
  ["1", 32, 838.2, 868.06, 50.292],
];

const HOUR_MS = 3_600_000;

describe("scale speed = model speed × ratio, whatever the layout clock", () => {
  it.each(SCALES)(
    "%s 1:%d: 60 mph is %d mm/s, 100 km/h %d mm/s, a mile %d m",
    (_, ratio, sixty, hundred, mile) => {
      expect(scaleKmh(ratio, Math.round(sixty * 3_600), HOUR_MS)).toBeCloseTo(SIXTY_MPH_KMH, 1);
      expect(scaleKmh(ratio, Math.round(hundred * 3_600), HOUR_MS)).toBeCloseTo(100, 1);
      // a mile in a minute is 60 mph
      expect(scaleKmh(ratio, Math.round(mile * 1_000), 60_000)).toBeCloseTo(SIXTY_MPH_KMH, 1);
    },
  );

  it("18 in in 5.2 s at 1:87.1 is 17.13 scale mph (calculated)", () => {
    expect(scaleKmh(87.1, 4_572, 52_000) / 1.609_344).toBeCloseTo(17.13, 2);
  });
});
