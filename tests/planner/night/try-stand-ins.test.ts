import { describe, expect, it } from "vitest";
import { tryStandIns } from "../../../src/planner/night/try-stand-ins.ts";
import type { Locomotive, Problem, Section } from "../../../src/planner/problem.ts";
import { PLAIN } from "../plain-records.ts";
import {
  arrives,
  calls,
  departs,
  locomotive,
  policyWith,
  section,
  smallProblem,
  train,
} from "../small-problem.ts";

/**
 * One train over A, B and C with locomotive 0; 1 is slow, 2 long, 3 draws more than the breaker, 4 comes close, 5 is just
 * like it. 2,000 mm in 20 s are 100 mm/s, 31.32 km/h at 1:87: the design's worked example has the figure.
 */
const problem: Problem = smallProblem({
  sections: [
    section("A", 2_000),
    section("B", 2_000, { mustClear: true }),
    section("C", 2_000, { district: 1 }),
  ],
  supplies: [{ ...PLAIN.supply, code: "S", commandSystem: 0, ratingMa: 9_000, accessoryMa: 0 }],
  districts: [
    { ...PLAIN.district, code: "D", supply: 0, breakerMa: 1_000 },
    { ...PLAIN.district, code: "E", supply: 0, breakerMa: 9_000 },
  ],
  locomotives: [
    locomotive("usual", { runningMa: 300 }),
    locomotive("slow", { maxSpeedKmh: 20 }),
    locomotive("long", { lengthMm: 1_400 }),
    locomotive("hungry", { runningMa: 1_200 }),
    locomotive("thirsty", { runningMa: 900 }),
    locomotive("alike", { runningMa: 300, maxSpeedKmh: 40 }),
  ],
  trains: [
    train("1", 1_000, [departs(0, 100), calls(1, 120, 180), arrives(2, 200)], {
      power: [{ locomotive: 0, atRear: false }],
    }),
  ],
});

const codesOf = (fromEntry: number) =>
  tryStandIns(problem, { train: 0, locomotive: 0, fromEntry }, [1, 2, 3, 4, 5]).map((found) => [
    ...new Set(found.map(({ code }) => code)),
  ]);

describe("a locomotive tried in the place of another", () => {
  it("brings only what it is to blame for", () => {
    expect(codesOf(0)).toEqual([
      ["path-too-fast"],
      ["train-longer-than-road"],
      ["district-will-trip"],
      ["district-too-close"],
      [],
    ]);
  });

  it("is not blamed for what the train has behind it", () => {
    const [, long, , close] = codesOf(1);
    // it has called at B, and is about to leave it
    expect(long).toEqual([]);
    // it stands in B, of district D, until it departs: the draw is found while it still stands there
    expect(close).toEqual(["district-too-close"]);
    const onlyE = {
      ...problem,
      sections: problem.sections.map((one, i) => ({ ...one, district: i === 0 ? 0 : 1 })),
    };
    const found = (fromEntry: number) =>
      tryStandIns(onlyE, { train: 0, locomotive: 0, fromEntry }, [3])[0]?.map(({ code }) => code);
    expect(found(0)).toContain("district-will-trip");
    expect(found(1)).toEqual([]);
  });

  it("is not blamed for what is wrong without it", () => {
    const weak = { ...problem, districts: problem.districts.map((one) => ({ ...one, breakerMa: 200 })) };
    expect(tryStandIns(weak, { train: 0, locomotive: 0, fromEntry: 0 }, [5])).toEqual([[]]);
  });

  const usualAnd = (given: Partial<Locomotive>) => [
    locomotive("usual", { runningMa: 300, stallMa: 500, inrushMa: 400 }),
    locomotive("other", { runningMa: 300, stallMa: 500, inrushMa: 400, ...given }),
  ];
  // longer by as much as the road in its way is then too short: 1,000 mm hold the train as it is, 1,200 mm long with the other
  const long = { lengthMm: 400 };
  const alike = { lengthMm: 200 };
  const oneMm = { lengthMm: 201 };
  const path = [departs(0, 100), calls(1, 120, 180), arrives(2, 200)];
  const power = [{ locomotive: 0, atRear: false }];
  const analog = { control: "analog", outputs: [0] } as const;
  const overB = (sectionB: Section, sectionC: Section, given: Partial<Locomotive>) => ({
    sections: [section("A", 2_000), sectionB, sectionC],
    controllers: [{ code: "K", transformerMa: 9_000, accessoryMa: 0 }],
    outputs: [{ code: "O", controller: 0, ratingMa: 9_000 }],
    locomotives: usualAnd(given),
    trains: [train("1", 1_000, path, { power })],
  });
  const changeover = (given: Partial<Locomotive>) =>
    overB(section("B", 1_000, { control: "changeover", outputs: [0] }), section("C", 2_000, analog), given);
  const loop = (given: Partial<Locomotive>) =>
    overB(section("B", 1_000, { returnLoop: true }), section("C", 2_000), given);
  const weak = (given: Partial<Locomotive>) => ({
    ...overB(section("B", 2_000), section("C", 2_000), given),
    districts: [{ ...PLAIN.district, code: "D", supply: 0, breakerMa: 1_000 }],
    // power that returns surges for longer than the breaker waits
    policy: policyWith({ inrushMs: 500 }),
  });
  const choosy = (given: Partial<Locomotive>) => ({
    ...overB(section("B", 2_000), section("C", 2_000), given),
    commandSystems: [{ ...PLAIN.commandSystem, code: "C", handsets: 99, longAddressMost: 9_999 }],
  });
  const decoder = (address: number) =>
    ({ decoder: { addressKind: "long", address, analogAllowed: true } }) as const;

  it.each<[string, Partial<Problem>, string[]]>([
    ["is too long to be changed over", changeover(long), ["train-bridges-feeds"]],
    ["is too long to be changed over by a millimetre", changeover(oneMm), ["train-bridges-feeds"]],
    ["is as long as the changeover section takes", changeover(alike), []],
    ["is too long for a return loop", loop(long), ["return-loop-too-short"]],
    ["is as long as the return loop takes", loop(alike), []],
    ["draws too much when it stalls", weak({ stallMa: 3_000 }), ["district-trips-on-stall"]],
    ["draws what the breaker bears when it stalls", weak({ stallMa: 1_000 }), []],
    ["draws too much when power returns", weak({ inrushMa: 1_001 }), ["district-trips-on-restart"]],
    ["draws what the breaker bears when power returns", weak({ inrushMa: 1_000 }), []],
    ["has an address that the system refuses", choosy(decoder(10_000)), ["address-refused"]],
    ["has the highest address that the system takes", choosy(decoder(9_999)), []],
  ])("is told of where it %s", (_, given, codes) => {
    const [found] = tryStandIns(smallProblem(given), { train: 0, locomotive: 0, fromEntry: 0 }, [1]);
    expect(found?.map(({ code }) => code)).toEqual(codes);
  });
});
