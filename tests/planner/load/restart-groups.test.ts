import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { groupForRestart, type RestartUnit } from "../../../src/planner/load/restart-groups.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";

/** The most that flows while the groups come up one after the other, and after the last of them. */
function mostDrawn(units: readonly RestartUnit[], groups: readonly (readonly number[])[]): number {
  let up = 0;
  let most = 0;
  for (const group of groups) {
    const members = units.filter(({ train }) => group.includes(train));
    most = Math.max(
      most,
      members.reduce((sum, { inrushMa }) => sum + inrushMa, up),
    );
    up += members.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
    most = Math.max(most, up);
  }
  return most;
}

/** `n` units of the same currents, after those that are given. */
const followedBy = (
  first: readonly Omit<RestartUnit, "train">[],
  n: number,
  same: Omit<RestartUnit, "train">,
) => [...first, ...Array.from({ length: n }, () => same)].map((unit, train) => ({ train, ...unit }));

describe("the order in which a district comes up again", () => {
  it("is found where small trains that came up first would leave no room for the second big one", () => {
    // one by one: 900, then 150 + 800, then 250 + ten of 10 that add up to 100, all within 1,000
    const units = followedBy(
      [
        { inrushMa: 900, drawsMa: 150 },
        { inrushMa: 800, drawsMa: 100 },
      ],
      10,
      { inrushMa: 10, drawsMa: 10 },
    );
    const { groups } = groupForRestart(units, 1_000);
    // the two big ones cannot come together, and each leaves room for some of the others only
    expect(groups).toHaveLength(3);
    expect(groups?.flat().sort((a, b) => a - b)).toEqual(units.map(({ train }) => train));
    expect(mostDrawn(units, groups ?? [])).toBeLessThanOrEqual(1_000);
  });

  it("does not exist where what they draw afterwards is more than the breaker bears", () => {
    const units = [
      { train: 0, inrushMa: 600, drawsMa: 600 },
      { train: 1, inrushMa: 300, drawsMa: 600 },
    ];
    expect(groupForRestart(units, 1_000)).toEqual({ groups: null, proven: true, tooBig: [] });
    expect(groupForRestart([{ train: 1, inrushMa: 300, drawsMa: 1_200 }], 1_000).tooBig).toEqual([1]);
  });

  it("is never said not to exist where some order of single trains is borne", () => {
    const unit = fc.record({
      inrushMa: fc.integer({ min: 1, max: 100 }),
      drawsMa: fc.integer({ min: 0, max: 20 }),
    });
    let found = 0;
    let none = 0;
    fc.assert(
      fc.property(
        fc.array(unit, { minLength: 12, maxLength: 24 }),
        fc.integer({ min: 100, max: 300 }),
        (drawn, breakerMa) => {
          const units = drawn.map(({ inrushMa, drawsMa }, train) => ({
            train,
            inrushMa: Math.max(inrushMa, drawsMa),
            drawsMa,
          }));
          const { groups, proven } = groupForRestart(units, breakerMa);
          if (groups === null) {
            none++;
            expect(proven).toBe(true);
            expect(bringUpAnyhow(units, breakerMa)).toBe(false);
          } else {
            found++;
            expect(mostDrawn(units, groups)).toBeLessThanOrEqual(breakerMa);
            expect(groups.flat().sort((a, b) => a - b)).toEqual(units.map(({ train }) => train));
          }
        },
      ),
      { numRuns: 400 },
    );
    expect(Math.min(found, none)).toBeGreaterThan(20);
  });

  /** Whether one at a time will do, found backwards: of all that are up, which may have come last? Any that may is taken away. */
  function bringUpAnyhow(units: readonly RestartUnit[], breakerMa: number): boolean {
    const up = [...units];
    let draws = up.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
    while (up.length > 0) {
      const last = up.findIndex(({ inrushMa, drawsMa }) => draws - drawsMa + inrushMa <= breakerMa);
      if (last < 0) return false;
      draws -= up[last]?.drawsMa ?? 0;
      up.splice(last, 1);
    }
    return true;
  }
});

describe("a district when power returns", () => {
  const given = (inrushMs: number, lightingMa: number) =>
    smallProblem({
      policy: policyWith({ pickUpMs: 0, handInMs: 0, reserve: 0, inrushMs }),
      sections: [section("S0", 2_000), section("S1", 2_000)],
      districts: [{ ...PLAIN.district, code: "D", supply: 0, breakerMa: 1_000 }],
      locomotives: [locomotive("E", { runningMa: 300, standingMa: 300, inrushMa: 800 })],
      rakes: [{ ...PLAIN.rake, code: "R", lightingMa, inrushMa: 0 }],
      trains: [
        train("A", 400, [departs(0, 100), arrives(1, 200)], {
          power: [{ locomotive: 0, atRear: false }],
          rakes: [0],
        }),
      ],
    });

  it("draws no less for lamps whose surge is not known than they take afterwards", () => {
    // 800 for the locomotive's surge and 400 for the lamps, on 1,000
    const { districts, findings } = check(given(500, 400));
    expect(districts[0]?.restart).toMatchObject({ inrushMa: 1_200, holds: false, tooBig: [0] });
    expect(findings.map(({ code, measured, limit }) => [code, measured, limit])).toEqual([
      ["district-trips-on-restart", 1_200, 1_000],
    ]);
  });

  it("does not hold because the surge is brief where what follows is too much", () => {
    // over in 50 ms of the breaker's 100, but then 300 + 800 flow
    expect(check(given(50, 400)).districts[0]?.restart).toMatchObject({ inrushMa: 1_200, holds: true });
    expect(check(given(50, 800)).districts[0]?.restart).toMatchObject({
      inrushMa: 1_600,
      holds: false,
      groups: null,
      tooBig: [0],
    });
  });
});
