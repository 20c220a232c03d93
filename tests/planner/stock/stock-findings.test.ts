import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { Section, Train } from "../../../src/planner/problem.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, locomotive, section, smallProblem, through, train } from "../small-problem.ts";

const ENGINE = { power: [{ locomotive: 0, atRear: false }], rakes: [0] };
const OUT = train("1", 500, [departs(0, 100), through(1), arrives(2, 120)], ENGINE);
const back = (from: number, second: number) =>
  train("2", 500, [departs(from, second), through(1), arrives(0, second + 20)], ENGINE);

function stockFindings(trains: readonly Train[], sections: readonly Partial<Section>[] = []) {
  const problem = smallProblem({
    sections: ["A", "B", "C", "D"].map((code, i) => section(code, 1_000, sections[i] ?? {})),
    locomotives: [locomotive("L")],
    rakes: [{ ...PLAIN.rake, code: "R", lightingMa: 0 }],
    trains,
  });
  return check(problem).findings.filter(({ code }) => code.startsWith("stock-"));
}

describe("stock that two trains have", () => {
  test("may work the one after the other from where it stands", () => {
    expect(stockFindings([OUT, back(2, 200)])).toEqual([]);
  });

  test("is in two trains where the later departs before the earlier has arrived", () => {
    expect(stockFindings([OUT, back(2, 110)])).toMatchObject([
      {
        code: "stock-in-two-trains",
        severity: "stops",
        trains: [0, 1],
        locomotives: [0],
        rakes: [0],
        span: { startMs: 110_000, endMs: 120_000 },
        measured: 10_000,
      },
    ]);
  });

  test("is elsewhere where the later departs from a section that the earlier did not end in", () => {
    expect(stockFindings([OUT, back(3, 200)])).toMatchObject([
      {
        code: "stock-elsewhere",
        severity: "stops",
        trains: [0, 1],
        sections: [2, 3],
        span: { startMs: 120_000, endMs: 200_000 },
      },
    ]);
  });

  test("on another road of the same place warns; the open line is no place", () => {
    const samePlace = [{}, {}, { place: 7 }, { place: 7 }];
    expect(stockFindings([OUT, back(3, 200)], samePlace)).toMatchObject([
      { code: "stock-elsewhere", severity: "warns" },
    ]);
    expect(stockFindings([OUT, back(3, 200)], [])).toMatchObject([{ severity: "stops" }]);
  });

  test("is carried by hand from one staging road to another", () => {
    const staged = [{}, {}, { handStaging: true }, { handStaging: true }];
    expect(stockFindings([OUT, back(3, 200)], staged)).toEqual([]);
    expect(stockFindings([OUT, back(3, 200)], staged.slice(0, 3))).toHaveLength(1);
  });

  test("of a long train is in every section that it covers when it ends", () => {
    const long = { ...OUT, lengthMm: 1_500 };
    const again = { ...back(1, 200), path: [departs(1, 200), arrives(0, 220)] };
    expect(stockFindings([long, again])).toEqual([]);
    expect(stockFindings([OUT, again])).toHaveLength(1);
  });
});
