import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { CONDUCTORS } from "../../../shared/vocabulary.ts";
import { check } from "../../../src/planner/check.ts";
import type { District, Supply, Wiring } from "../../../src/planner/problem.ts";
import { OHM_PER_METRE_AT_20 } from "../../../src/planner/wiring/conductors.ts";
import { analogVolts, loopOhm, runFaults, runFigures, trackVolts } from "../../../src/planner/wiring/run.ts";
import { thinnestConductor } from "../../../src/planner/wiring/thinnest.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";

const run = (conductor: keyof typeof OHM_PER_METRE_AT_20, metres: number, temperatureC = 20): Wiring => ({
  ohmPerMetreAt20: OHM_PER_METRE_AT_20[conductor],
  lengthMm: metres * 1_000,
  temperatureC,
});
const supply = (volts: number, sourceOhm = 0.1): Supply => ({
  code: "S",
  commandSystem: 0,
  ratingMa: 5_000,
  accessoryMa: 0,
  volts,
  sourceOhm,
});

test("every conductor that a record can name has its resistance, and no other", () => {
  expect(Object.keys(OHM_PER_METRE_AT_20).sort()).toEqual([...CONDUCTORS].sort());
});

describe("resistance", () => {
  // IEC 60228 (2004) tables 1 to 3, Ω/km at 20 °C, and the loop of 10 m of class 5
  it.each([
    ["0.5", 36, 39, 0.78],
    ["0.75", 24.5, 26, 0.52],
    ["1", 18.1, 19.5, 0.39],
    ["1.5", 12.1, 13.3, 0.266],
    ["2.5", 7.41, 7.98, 0.1596],
    ["4", 4.61, 4.95, 0.099],
  ] as const)("of %s mm² is that of the standard", (mm2, solid, flexible, loop) => {
    expect(OHM_PER_METRE_AT_20[`${mm2} mm2 solid`] * 1_000).toBeCloseTo(solid, 9);
    expect(OHM_PER_METRE_AT_20[`${mm2} mm2 flexible`] * 1_000).toBeCloseTo(flexible, 9);
    expect(loopOhm(run(`${mm2} mm2 flexible`, 10))).toBeCloseTo(loop, 9);
  });

  // Floyd, Electric Circuit Fundamentals, Ω/1000 ft; a foot is 0.3048 m (1959 definition, from memory)
  it.each([
    [10, 0.9989],
    [16, 4.016],
    [24, 25.67],
  ] as const)("of AWG %i is that of the textbook", (gauge, perThousandFeet) => {
    expect(OHM_PER_METRE_AT_20[`AWG ${gauge}`] * 304.8).toBeCloseTo(perThousandFeet, 9);
  });

  // ASTM B258, from memory: diameter mm = 0.127 × 92^((36 − n)/39); resistivity of annealed copper 0.017241 Ω mm²/m (IEC 60028)
  it.each([10, 12, 14, 16, 18, 20, 22, 24] as const)("of AWG %i follows from its diameter", (gauge) => {
    const area = (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
    expect(OHM_PER_METRE_AT_20[`AWG ${gauge}`] / (0.017241 / area)).toBeCloseTo(1, 2);
  });

  // IEC 60028: α = 0.00393/K at 20 °C; 13.3 Ω/km is 14.35 at 40 °C and 15.91 at 70 °C
  it.each([
    [40, 14.35],
    [70, 15.91],
  ])("grows with temperature: at %i °C", (celsius, ohmPerKm) => {
    expect(loopOhm(run("1.5 mm2 flexible", 500, celsius))).toBeCloseTo(ohmPerKm, 2);
  });
});

describe("volts lost in the wires", () => {
  // 10 m of 1.5 mm², class 5: 2·L·r·I
  it.each([
    [3_000, 0.798],
    [5_000, 1.33],
  ])("over 10 m of 1.5 mm² at %i mA", (peakMa, dropV) => {
    const figures = runFigures(run("1.5 mm2 flexible", 10), supply(15), peakMa);
    expect(figures.dropV).toBeCloseTo(dropV, 9);
    expect(figures.farEndV).toBeCloseTo(15 - dropV, 9);
  });

  // an electricians' training page: 100 ft at 4.99 Ω/1000 ft, 4 A, 24 V: printed 4.0 V, 16.7 %
  it("over 100 ft at 4.99 Ω/1000 ft", () => {
    const wire = { ohmPerMetreAt20: 4.99 / 304.8, lengthMm: 30_480, temperatureC: 20 };
    const { dropV } = runFigures(wire, supply(24), 4_000);
    expect(dropV).toBeCloseTo(3.992, 3);
    expect((100 * dropV) / 24).toBeCloseTo(16.63, 2);
  });
});

describe("what a short at the far end brings", () => {
  // U/(source + loop), source 0.1 Ω
  it.each([
    ["1.5 mm2 flexible", 10, 15, 41.0],
    ["0.5 mm2 flexible", 15, 15, 11.8],
    ["0.5 mm2 flexible", 25, 12, 5.85],
  ] as const)("over %s, %i m, at %i V", (conductor, metres, volts, amps) => {
    expect(runFigures(run(conductor, metres), supply(volts), 0).faultMa / 1_000).toBeCloseTo(amps, 1);
  });

  it("may be only 1.17 times what trips the breaker, which is too little to be sure of", () => {
    const figures = runFigures(run("0.5 mm2 flexible", 25), supply(12), 0);
    expect(figures.faultMa / 5_000).toBeCloseTo(1.17, 2);
    expect(runFaults(figures, { dropV: 9, farEndV: 8.5, faultMa: 2 * 5_000 })).toMatchObject({ fault: true });
  });
});

// NMRA S-9.1 (2020) table 3, and what decoders must survive
it.each([
  [160, { least: 8.5, normal: 12, most: 22, survived: 24 }],
  [220, { least: 8.5, normal: 12, most: 22, survived: 24 }],
  [87, { least: 8.5, normal: 15, most: 22, survived: 27 }],
  [64, { least: 8.5, normal: 15, most: 22, survived: 27 }],
  [45, { least: 8.5, normal: 15, most: 22, survived: 27 }],
  [32, { least: 8.5, normal: 18, most: 22, survived: 27 }],
])("track volts of 1:%i are those of the standard", (scale, volts) => {
  expect(trackVolts(scale)).toEqual(volts);
});

// MOROP NEM 630 (1982): G ≤ 6.5 mm 8 V; below 32 mm 12 V; from 32 mm 16 V
it.each([
  [6.5, 8],
  [9, 12],
  [16.5, 12],
  [32, 16],
  [45, 16],
])("analog track of %f mm gauge has its nominal volts", (gauge, volts) => {
  expect(analogVolts(gauge)).toBe(volts);
});

describe("the thinnest conductor that would do", () => {
  const asked = fc.record({
    metres: fc.integer({ min: 1, max: 60 }),
    peakMa: fc.integer({ min: 0, max: 8_000 }),
    volts: fc.integer({ min: 10, max: 20 }),
    dropShare: fc.constantFrom(0.02, 0.05, 0.1),
    faultMa: fc.integer({ min: 1_000, max: 30_000 }),
  });

  it("does, and no conductor of more resistance does", () => {
    let none = 0;
    let some = 0;
    fc.assert(
      fc.property(asked, ({ metres, peakMa, volts, dropShare, faultMa }) => {
        const limits = { dropV: volts * dropShare, farEndV: 8.5, faultMa };
        const does = (ohmPerMetre: number) => {
          const loop = 2 * metres * ohmPerMetre;
          const drop = (loop * peakMa) / 1_000;
          return (
            drop <= limits.dropV + 1e-9 &&
            volts - drop >= 8.5 - 1e-9 &&
            (1_000 * volts) / (0.1 + loop) >= faultMa
          );
        };
        const would = Object.values(OHM_PER_METRE_AT_20).filter(does);
        const found = thinnestConductor(
          { lengthMm: metres * 1_000, temperatureC: 20 },
          supply(volts),
          peakMa,
          limits,
        );
        expect(found === null ? undefined : OHM_PER_METRE_AT_20[found]).toBe(
          would.length === 0 ? undefined : Math.max(...would),
        );
        if (found === null) none++;
        else some++;
      }),
      { numRuns: 500 },
    );
    expect(Math.min(none, some)).toBeGreaterThan(20);
  });
});

describe("the check", () => {
  const problem = (wiring: Wiring | null, tested: District["tested"], volts = 15) =>
    smallProblem({
      policy: policyWith({ dropShare: 0.05, faultMargin: 2 }),
      sections: [section("A", 2_000), section("B", 2_000)],
      supplies: [{ ...PLAIN.supply, code: "S", commandSystem: 0, ratingMa: 9_000, accessoryMa: 0, volts }],
      districts: [{ ...PLAIN.district, code: "D", supply: 0, breakerMa: 5_000, wiring, tested }],
      locomotives: [locomotive("E", { runningMa: 3_000 })],
      trains: [
        train("1", 400, [departs(0, 100), arrives(1, 160)], { power: [{ locomotive: 0, atRear: false }] }),
      ],
    });
  const found = (...given: Parameters<typeof problem>) =>
    check(problem(...given)).findings.map(({ code, measured, limit }) => [code, measured, limit]);

  it("says nothing of wires that nobody has written down, nor of tests that a plan is silent on", () => {
    expect(found(null, "unsaid")).toEqual([]);
  });

  it("finds wires that lose too much, at the peak", () => {
    // 0.798 V of 15 V is 5.3 %
    expect(found(run("1.5 mm2 flexible", 10), "passed")).toEqual([["district-drop-too-big", 0.8, 0.75]]);
    expect(found(run("2.5 mm2 flexible", 10), "passed")).toEqual([]);
  });

  it("rounds what fails away from what is asked, so that the two never read alike", () => {
    // 9.401 m of 1.5 mm²: 2 × 9.401 × 0.0133 × 3 = 0.7502 V lost, of which 0.75 V are allowed
    const wire = { ...run("1.5 mm2 flexible", 0), lengthMm: 9_401 };
    expect(found(wire, "passed")).toEqual([["district-drop-too-big", 0.76, 0.75]]);
  });

  it("finds a far end with too few volts, and a breaker that a short there would not open", () => {
    // loop 1.95 Ω: 5.85 V lost, 12 / 2.05 = 5.85 A where 10 A are asked for
    expect(found(run("0.5 mm2 flexible", 25), "passed", 12)).toEqual([
      ["district-fault-not-seen", 5_854, 10_000],
      ["district-drop-too-big", 5.85, 0.6],
      ["district-volts-too-low", 6.15, 8.5],
    ]);
  });

  it("finds districts that failed their short test, or have none", () => {
    expect(found(null, "failed")).toEqual([["district-test-failed", null, null]]);
    expect(found(null, "untested")).toEqual([["district-not-tested", null, null]]);
  });
});
