import { describe, expect, it } from "vitest";
import { costAllDigital, type DigitalCost } from "../../../src/planner/costing/all-digital.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";
import { lines } from "./lines.ts";

const sizes = { breakerMa: 2_500, ratingMa: 5_000 };
const head = (locomotive: number) => ({ locomotive, atRear: false });
const policy = policyWith({ reserve: 0, pickUpMs: 0, handInMs: 0 });

/** Sections by name, and the links between them; in each that is given currents a train stands or moves, drawing that. */
function railway(
  names: string,
  links: string,
  drawsMa: Readonly<Record<string, number>>,
  given: Partial<Problem> = {},
): Problem {
  const list = names.split(" ");
  const at = (name: string | undefined) => list.indexOf(name ?? "");
  const drawing = Object.entries(drawsMa);
  return smallProblem({
    policy,
    sections: list.map((name) => section(name, 2_000)),
    links: links.split(" ").map((link) => {
      const [from, to] = link.split("-");
      return { from: at(from), to: at(to), oneWay: false };
    }),
    locomotives: drawing.map(([name, ma]) => locomotive(`E${name}`, { runningMa: ma, standingMa: ma })),
    trains: drawing.map(([name], i) =>
      train(`T${name}`, 400, [departs(at(name), 100), arrives(at(name), 200)], { power: [head(i)] }),
    ),
    ...given,
  });
}

const named = ({ sections }: Problem, { districts }: DigitalCost) =>
  districts.map(
    (district) => `${district.sections.map((at) => sections[at]?.code).join("+")}: ${district.peakMa}`,
  );

describe("all-digital", () => {
  it("makes districts that each bear their peak with the reserve free, and boosters of them", () => {
    // eight trains of 500 mA: four to a district of 2.5 A with 20 % free, all eight on one booster of 5 A
    const cost = costAllDigital(lines(8), sizes);
    expect(cost).toMatchObject({
      handsets: 8,
      handsetsWithSpares: 9,
      peakMa: 4_000,
      leastDistricts: 2,
      leastSupplies: 1,
    });
    expect(cost.districts.map(({ peakMa }) => peakMa)).toEqual([2_000, 2_000]);
    expect(cost.supplies).toEqual([{ districts: [0, 1], accessoryMa: 0, peakMa: 4_000 }]);
    expect(cost.districts.flatMap(({ sections }) => sections).sort((a, b) => a - b)).toHaveLength(24);
  });

  it("says which locomotives want a decoder, and which section is too much for any breaker", () => {
    const problem = lines(2);
    const locomotives = problem.locomotives.map((one, i) =>
      i === 0 ? { ...one, decoder: null, runningMa: 2_100 } : one,
    );
    const cost = costAllDigital({ ...problem, locomotives }, sizes);
    expect(cost.decoders).toEqual([0]);
    expect(cost.tooMuch).toEqual([0, 1, 2]);
  });

  it("feeds accessories from whichever booster has room, and from one more where none has", () => {
    const plain = lines(8);
    const [supply] = plain.supplies;
    if (!supply) throw new Error("a supply was made");
    const problem = {
      ...plain,
      supplies: [{ ...supply, accessoryMa: 1_300 }],
      controllers: [{ code: "K", transformerMa: 1_000, accessoryMa: 200 }],
    };
    // 4,000 for trains and 1,500 beside them: 5 A with a fifth free bear the trains alone
    expect(costAllDigital(problem, sizes)).toMatchObject({
      peakMa: 4_000,
      accessoriesMa: 1_500,
      supplies: [
        { districts: [0, 1], accessoryMa: 0, peakMa: 4_000 },
        { districts: [], accessoryMa: 1_500, peakMa: 1_500 },
      ],
      leastSupplies: 2,
      leastDistricts: 2,
    });
    expect(costAllDigital(problem, { ...sizes, ratingMa: 7_000 })).toMatchObject({
      supplies: [{ districts: [0, 1], accessoryMa: 1_500, peakMa: 5_500 }],
      leastSupplies: 1,
    });
    // five boosters' worth of lamps and one of trains, a booster of 1 A giving 800; a district no more than that
    const small = costAllDigital(
      { ...lines(1), supplies: [{ ...supply, accessoryMa: 3_700 }] },
      { breakerMa: 2_500, ratingMa: 1_000 },
    );
    expect(small.supplies.map(({ accessoryMa, peakMa }) => [accessoryMa, peakMa])).toEqual([
      [300, 800],
      [800, 800],
      [800, 800],
      [800, 800],
      [800, 800],
      [200, 200],
    ]);
    expect(small.leastSupplies).toBe(6);
  });

  it("makes each district of neighbours, from one end of the line to the other", () => {
    // X3-X2-X1-X0-Y1-Y2-Y3 with 500 mA in each: two to a breaker of 1 A
    const problem = railway("X0 X1 Y1 X2 Y2 X3 Y3", "X3-X2 X2-X1 X1-X0 X0-Y1 Y1-Y2 Y2-Y3", {
      X0: 500,
      X1: 500,
      X2: 500,
      X3: 500,
      Y1: 500,
      Y2: 500,
      Y3: 500,
    });
    const cost = costAllDigital(problem, { breakerMa: 1_000, ratingMa: 2_000 });
    expect(named(problem, cost)).toEqual(["X3+X2: 1000", "X1+X0: 1000", "Y1+Y2: 1000", "Y3: 500"]);
    // and the boosters of neighbouring districts
    expect(cost.supplies.map(({ districts }) => districts)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(cost).toMatchObject({ peakMa: 3_500, leastDistricts: 4, leastSupplies: 2 });
  });

  it("goes round at a junction to what the breaker still bears", () => {
    // from A1: J and then B1, not C1; C1 takes C2 along
    const problem = railway("A1 J B1 C1 C2", "A1-J J-B1 J-C1 C1-C2", {
      A1: 400,
      J: 200,
      B1: 300,
      C1: 500,
      C2: 500,
    });
    expect(named(problem, costAllDigital(problem, { breakerMa: 1_000, ratingMa: 3_000 }))).toEqual([
      "A1+J+B1: 900",
      "C1+C2: 1000",
    ]);
  });

  it("goes on with another piece of track only where nothing of this one is left", () => {
    const draws = { A1: 500, A2: 400, A3: 200, B1: 100, B2: 100 };
    const problem = railway("A1 A2 A3 B1 B2", "A1-A2 A2-A3 B1-B2", draws);
    // B1 would go on the first breaker, but A3 is left there, which would not
    expect(named(problem, costAllDigital(problem, { breakerMa: 1_000, ratingMa: 3_000 }))).toEqual([
      "A1+A2: 900",
      "A3+B1+B2: 400",
    ]);
  });

  it("opens no district for sections that draw nothing: they go with a neighbour, however much it draws", () => {
    const problem = railway("U0 H U1 Z", "U0-H H-U1", { H: 4_000 });
    const cost = costAllDigital(problem, { breakerMa: 3_000, ratingMa: 5_000 });
    expect(named(problem, cost)).toEqual(["H+U0+U1: 4000"]);
    expect(cost.tooMuch).toEqual([1]);
    expect(cost.supplies).toHaveLength(1);
  });

  it("counts a train over a joint of two districts in both, and so twice on their booster", () => {
    // 150 mA stand at either end while 600 run from one to the other: 750 each, 900 in all
    const problem = railway("S0 S1", "S0-S1", { S0: 150, S1: 150 });
    const running = {
      ...problem,
      locomotives: [...problem.locomotives, locomotive("E", { runningMa: 600, standingMa: 0 })],
      trains: [...problem.trains, train("T", 400, [departs(0, 300), arrives(1, 400)], { power: [head(2)] })],
    };
    const cost = costAllDigital(running, { breakerMa: 800, ratingMa: 1_500 });
    expect(cost).toMatchObject({
      districts: [
        { sections: [0], peakMa: 750 },
        { sections: [1], peakMa: 750 },
      ],
      peakMa: 900,
      // 150 + 150 + 600 + 600
      supplies: [{ districts: [0, 1], peakMa: 1_500 }],
    });
    expect(costAllDigital(running, { breakerMa: 800, ratingMa: 1_499 }).supplies).toHaveLength(2);
    // one breaker for both counts the train once
    expect(costAllDigital(running, { breakerMa: 900, ratingMa: 1_499 }).districts).toHaveLength(1);
  });

  it("counts stock that turns round once", () => {
    const plain = railway("S0 S1", "S0-S1", {});
    const turned = {
      ...plain,
      locomotives: [locomotive("E", { runningMa: 500, standingMa: 100 })],
      trains: [
        train("A", 400, [departs(0, 100), arrives(1, 200)], { power: [head(0)] }),
        train("B", 400, [departs(1, 400), arrives(0, 500)], { power: [head(0)] }),
      ],
    };
    expect(costAllDigital(turned, sizes)).toMatchObject({
      peakMa: 500,
      districts: [{ sections: [0, 1], peakMa: 500 }],
      handsets: 1,
    });
  });

  it("makes no district larger than a booster bears", () => {
    const problem = railway("S0 S1 S2", "S0-S1 S1-S2", { S0: 500, S1: 500, S2: 500 });
    const cost = costAllDigital(problem, { breakerMa: 3_000, ratingMa: 1_000 });
    expect(named(problem, cost)).toEqual(["S0+S1: 1000", "S2: 500"]);
    expect(cost).toMatchObject({ supplies: [{ peakMa: 1_000 }, { peakMa: 500 }], leastDistricts: 2 });
  });

  it("keeps exactly the reserve: 930 of 1,000 mA where 7 % stays free", () => {
    const problem = railway("S0 S1", "S0-S1", { S0: 465, S1: 465 }, { policy: { ...policy, reserve: 0.07 } });
    expect(costAllDigital(problem, { breakerMa: 1_000, ratingMa: 1_000 })).toMatchObject({
      districts: [{ peakMa: 930 }],
      supplies: [{ peakMa: 930 }],
      leastDistricts: 1,
      leastSupplies: 1,
      tooMuch: [],
    });
  });

  it("needs nothing where nothing is drawn", () => {
    expect(costAllDigital(railway("S0 S1", "S0-S1", {}), sizes)).toMatchObject({
      districts: [],
      supplies: [],
      peakMa: 0,
      leastDistricts: 0,
      leastSupplies: 0,
    });
  });
});
