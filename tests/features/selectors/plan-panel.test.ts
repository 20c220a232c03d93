import { describe, expect, test } from "vitest";
import type { CheckReport } from "../../../shared/check.ts";
import { planPanel } from "../../../src/features/selectors/plan-panel.ts";
import { analog, branch, hauledBy } from "../../planner/analog/branch.ts";
import { arrives, departs, section, train } from "../../planner/small-problem.ts";

const M = 1_000;
const ROAD = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("c", M, [0, 1])];

/** A check of which only the findings count. */
const finding =
  (...codes: string[]) =>
  () =>
    ({
      findings: codes.map((code) => ({ code, severity: "stops", sentence: code, cure: "" })),
    }) as unknown as CheckReport;
const never = () => {
  throw new Error("nobody asks for the check of a plan that has a schedule");
};

describe("the panel of a slot", () => {
  test("has a schedule that its judge has passed", () => {
    const plan = branch(ROAD, [train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0))]);
    const panel = planPanel(plan, never);
    expect(panel.status).toBe("made");
    if (panel.status === "made")
      expect(panel.turns).toEqual({ made: panel.schedule.turns.length, atLeast: 3 });
  });

  test("has nothing to turn where nothing runs on analog track", () => {
    const plan = branch(
      [section("a", M), section("b", M)],
      [train("1", 500, [departs(0, 600), arrives(1, 610)])],
    );
    expect(planPanel(plan, never)).toEqual({ status: "no-analog" });
  });

  test("has none where the plan wants one section for two, and says what of the plan it is, not what else is wrong", () => {
    const clashing = branch(ROAD, [
      train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0)),
      train("2", 500, [departs(2, 600), arrives(1, 610)], hauledBy(1)),
    ]);
    const panel = planPanel(clashing, finding("handsets-too-few", "section-clash"));
    expect(panel).toMatchObject({ status: "plan-stopped", reasons: [{ code: "section-clash" }] });
    expect(() => planPanel(clashing, finding("handsets-too-few"))).toThrow(/judge/);
  });

  test("has none where no output is left for a train", () => {
    const one = branch(
      ROAD.map((each) => ({ ...each, outputs: [0] })),
      [
        train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0)),
        train("2", 500, [departs(2, 600), arrives(2, 610)], hauledBy(1)),
      ],
    );
    expect(planPanel(one, finding("outputs-too-few", "section-clash"))).toMatchObject({
      status: "no-assignment",
      reasons: [{ code: "outputs-too-few" }],
    });
  });
});
