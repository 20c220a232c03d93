import { expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { compilePlan } from "../../../src/planner/compile-plan.ts";
import { makeSchedule } from "../../../src/planner/selectors/make-schedule.ts";
import { judgeSchedule } from "../../../src/planner/verify/judge-schedule.ts";
import { arrives, departs, locomotive, policyWith, section, smallProblem, train } from "../small-problem.ts";

/**
 * In as A, digital, to the changeover section X at 200 s; out as B, analog, at 1,000 s, the same locomotive: 40 mA at a stand.
 * Set-up and release 5 s. Design section 6: X is changed over while it stands there, and is never both.
 */
const power = [{ locomotive: 0, atRear: false }];
const problem = smallProblem({
  policy: policyWith({ pickUpMs: 60_000 }),
  sections: [
    section("main", 2_000),
    section("X", 2_000, { control: "changeover", outputs: [0] }),
    section("branch", 2_000, { control: "analog", district: -1, outputs: [0] }),
  ],
  controllers: [{ code: "K", transformerMa: 2_000, accessoryMa: 0 }],
  outputs: [{ code: "K1", controller: 0, ratingMa: 1_000 }],
  locomotives: [locomotive("E", { runningMa: 140, standingMa: 40 })],
  trains: [
    train("A", 400, [departs(0, 100), arrives(1, 200)], { power }),
    train("B", 400, [departs(1, 1_000), arrives(2, 1_100)], { power }),
  ],
});

test("stock that goes on from digital to analog as another train is changed over at set-up before it leaves", () => {
  const report = check(problem);
  expect(report.districts[0]?.curve.slice(-2)).toEqual([
    [200_000, 40],
    [995_000, 0],
  ]);
  const made = makeSchedule(compilePlan(problem), report.analog);
  if (made.status !== "made") throw new Error(made.status);
  const turns = made.schedule.turns.filter((turn) => turn.section === 1);
  // nor may it be turned sooner: stock under digital control is not harmless
  expect(turns[0]).toMatchObject({ to: 0, atMs: 995_000, mayMs: { startMs: 995_000 } });
  expect(judgeSchedule(problem, made.schedule.turns)).toEqual([]);
  // within the driver's time, but while the section is digital
  const early = made.schedule.turns.map((turn) => (turn === turns[0] ? { ...turn, atMs: 940_000 } : turn));
  expect(judgeSchedule(problem, early)).toEqual([
    { kind: "output-meets-digital", section: 1, train: 0, atMs: 940_000 },
  ]);
});
