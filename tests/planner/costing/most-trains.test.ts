import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { mostTrains } from "../../../src/planner/costing/most-trains.ts";
import type { CommandSystem, Problem } from "../../../src/planner/problem.ts";
import { PLAIN } from "../plain-records.ts";
import { section, smallProblem } from "../small-problem.ts";
import { lines } from "./lines.ts";

const system = (given: Partial<CommandSystem>): Pick<Problem, "commandSystems"> => ({
  commandSystems: [{ ...PLAIN.commandSystem, code: "C", handsets: 99, ...given }],
});

const supply = (given: { ratingMa: number; accessoryMa: number }): Pick<Problem, "supplies"> => ({
  supplies: [{ ...PLAIN.supply, code: "S", commandSystem: 0, ...given }],
});

/** The same lines, analog, all of them within reach of every output of one controller. */
function analogLines(
  trains: number,
  { outputs, transformerMa, accessoryMa = 0, ratingMa = 1_000 }: Record<string, number> & { outputs: number },
): Problem {
  const plain = lines(trains);
  const every = Array.from({ length: outputs }, (_, at) => at);
  return {
    ...plain,
    controllers: [{ code: "K", transformerMa: transformerMa ?? 0, accessoryMa }],
    outputs: every.map((at) => ({ code: `o${at}`, controller: 0, ratingMa })),
    sections: plain.sections.map((one) => ({
      ...one,
      control: "analog" as const,
      district: -1,
      outputs: every,
    })),
  };
}

const howFar = (problem: Problem) => mostTrains(problem, check(problem));
const codes = (problem: Problem) => check(problem).findings.map(({ code }) => code);

describe("how far the present equipment goes", () => {
  it("is as far as what gives first, the mix growing evenly", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 30 }), (count, handsets) => {
        const problem = lines(count, system({ handsets }));
        const { now, most, stretches } = howFar(problem);
        // ten amps with 20 % free bear sixteen trains of half an amp; each train takes one handset
        expect(now).toBe(count);
        expect(most).toBe(Math.min(16, handsets));
        expect(stretches[0]?.kind).toBe(handsets <= 16 ? "handsets" : "district");
        // a train more than that does not run
        expect(
          codes(lines((most ?? 0) + 1, { commandSystems: problem.commandSystems })).some((code) =>
            /^(handsets-too-few|district-too-close|supply-too-close)$/.test(code),
          ),
        ).toBe(true);
        expect(codes(lines(most ?? 0, { commandSystems: problem.commandSystems }))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("is no farther than the decoder addresses and the handsets that a command system takes at once", () => {
    // a train each: three of three addresses, and a fourth train is one too many
    expect(howFar(lines(3, system({ mostAddresses: 3 })))).toMatchObject({
      most: 3,
      stretches: [
        { kind: "addresses", at: 0, used: 3, has: 3, trains: 3 },
        { kind: "district" },
        { kind: "supply" },
        { kind: "handsets" },
      ],
    });
    expect(codes(lines(4, system({ mostAddresses: 3 })))).toEqual(["addresses-too-many"]);
    expect(howFar(lines(3, system({ mostHandsets: 4 })))).toMatchObject({
      most: 4,
      stretches: [{ kind: "handset-limit", used: 3, has: 4 }, {}, {}, {}],
    });
    expect(codes(lines(5, system({ mostHandsets: 4 })))).toEqual(["handsets-too-many"]);
  });

  it("counts both addresses of a double-headed train", () => {
    const plain = lines(2, system({ mostAddresses: 8 }));
    const [first, second] = plain.trains;
    if (!first || !second) throw new Error("two trains were made");
    const power = [...first.power, ...second.power];
    // one train with two addresses; eight addresses are four such trains
    expect(howFar({ ...plain, trains: [{ ...first, power }] })).toMatchObject({
      now: 1,
      stretches: [{ kind: "addresses", used: 2, has: 8, trains: 4 }, {}, {}, {}],
    });
  });

  it("is no farther than a transformer, however many outputs are behind it", () => {
    // 500 of 625 less a fifth of it
    const one = analogLines(1, { outputs: 8, transformerMa: 625 });
    expect(howFar(one)).toMatchObject({
      most: 1,
      stretches: [
        { kind: "transformer", at: 0, used: 500, has: 500, trains: 1 },
        { kind: "outputs", trains: 8 },
      ],
    });
    expect(codes(one)).toEqual([]);
    expect(codes(analogLines(2, { outputs: 8, transformerMa: 625 }))).toEqual(["controller-over-rating"]);
    // two of 500 and lamps of 600 beside them: 2,500 less a fifth, less the lamps
    expect(howFar(analogLines(2, { outputs: 8, transformerMa: 2_500, accessoryMa: 600 }))).toMatchObject({
      most: 2,
      stretches: [{ kind: "transformer", used: 1_000, has: 1_400 }, {}],
    });
  });

  it("asks of an output's rating only that it bears its one train: more trains take more outputs", () => {
    const fits = analogLines(1, { outputs: 3, transformerMa: 10_000, ratingMa: 625 });
    expect(howFar(fits)).toMatchObject({
      most: 3,
      stretches: [{ kind: "outputs" }, { kind: "transformer" }],
    });
    const tooMuch = analogLines(1, { outputs: 3, transformerMa: 10_000, ratingMa: 620 });
    expect(howFar(tooMuch).stretches[0]).toMatchObject({ kind: "output", used: 500, has: 496, trains: 0 });
  });

  it("is never below nothing", () => {
    // accessories alone take 4.5 A of the 4 A that 5 A with a fifth free leave
    const problem = lines(3, supply({ ratingMa: 5_000, accessoryMa: 4_500 }));
    expect(howFar(problem)).toMatchObject({
      most: 0,
      stretches: [{ kind: "supply", used: 1_500, has: 0, trains: 0 }, {}, {}],
    });
  });

  it("puts the tighter of two first that bear equally many trains", () => {
    // both bear 3: all of three handsets, and 1,500 of the 1,600 mA that are free of the booster
    const problem = lines(3, { ...system({ handsets: 3 }), ...supply({ ratingMa: 2_000, accessoryMa: 0 }) });
    expect(howFar(problem).stretches.map(({ kind, trains }) => [kind, trains])).toEqual([
      ["handsets", 3],
      ["supply", 3],
      ["district", 16],
    ]);
  });

  it("keeps exactly the reserve: 930 of 1,000 mA where 7 % stays free", () => {
    const [first] = lines(1).locomotives;
    if (!first) throw new Error("a locomotive was made");
    const plain = lines(1, supply({ ratingMa: 1_000, accessoryMa: 0 }));
    const problem = {
      ...plain,
      policy: { ...plain.policy, reserve: 0.07 },
      locomotives: [{ ...first, runningMa: 930 }],
    };
    expect(howFar(problem)).toMatchObject({ most: 1, stretches: [{ kind: "supply", has: 930 }, {}, {}] });
    expect(codes(problem)).toEqual([]);
  });

  it("has no end where nothing limits it, and where no train runs", () => {
    const plain = lines(1);
    const sections = plain.sections.map((one) => ({ ...one, control: "dead" as const, district: -1 }));
    expect(howFar({ ...plain, sections })).toEqual({ now: 1, most: null, stretches: [] });
    expect(howFar(smallProblem({ sections: [section("S", 1_000)] }))).toEqual({
      now: 0,
      most: null,
      stretches: [],
    });
  });
});
