import { describe, expect, test } from "vitest";
import { compilePlan } from "../../../src/planner/compile-plan.ts";
import { makeSchedule } from "../../../src/planner/selectors/make-schedule.ts";
import { sweepPlan } from "../../../src/planner/sweep.ts";
import { judgeSchedule } from "../../../src/planner/verify/judge-schedule.ts";
import { analog, branch, hauledBy } from "../analog/branch.ts";
import { arrives, calls, departs, through, train } from "../small-problem.ts";
import { scheduleOf } from "./schedule.ts";

// Common practice of the trade under independent (analog) control; no published source. The policy of these plans:
// set-up and release 5 s, pick-up 60 s before departure, hand-in 30 s after arrival, an output may be given up at a
// call of 30 s.

const M = 1_000;
const ROAD = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("c", M, [0, 1]), analog("d", M, [0, 1])];

/** Second, section, position: −1 is off. */
const turnsOf = (plan: Parameters<typeof scheduleOf>[0]) =>
  scheduleOf(plan).turns.map(({ atMs, section, to }) => [atMs / 1_000, section, to]);

describe("common practice at the panel", () => {
  test("parked stock stands in a section switched off, before its train and after it", () => {
    const plan = branch(ROAD, [train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0))]);
    // on when its driver takes it over, section b with it; off when it is handed in. Section a is empty then
    expect(turnsOf(plan)).toEqual([
      [540, 0, 0],
      [540, 1, 0],
      [640, 1, -1],
    ]);
  });

  test("both sections at a gap are on the train's output before it straddles the gap, and stay so until it is over", () => {
    const plan = branch(ROAD, [
      train("1", 800, [departs(0, 600), through(1), through(2), arrives(3, 640)], hauledBy(0)),
    ]);
    const { bands } = scheduleOf(plan);
    // 3 m in 40 s; the tail of 0.8 m is over a gap 10 2/3 s after the head
    for (const [gap, headAtS] of [
      [0, 600],
      [1, 613.333],
      [2, 626.667],
    ] as const)
      for (const section of [gap, gap + 1]) {
        const band = bands.find((each) => each.section === section && each.output === 0);
        expect(band?.span.startMs).toBeLessThanOrEqual(headAtS * 1_000);
        expect(band?.span.endMs).toBeGreaterThanOrEqual((headAtS + 10.667) * 1_000);
      }
  });

  test("a selector has one position at a time: none is turned while anything runs in its section", () => {
    const plan = branch(ROAD, [
      train("1", 500, [departs(0, 600), through(1), calls(2, 620, 660), arrives(3, 670)], hauledBy(0)),
      train("2", 500, [departs(3, 760), through(2), through(1), arrives(0, 790)], hauledBy(0)),
    ]);
    expect(judgeSchedule(plan, scheduleOf(plan).turns)).toEqual([]);
  });

  test("a section that the next train wants on the same output is not turned, nor one that nothing uses again", () => {
    const plan = branch(ROAD, [
      train("1", 500, [departs(0, 600), through(1), arrives(2, 630)], hauledBy(0)),
      train("2", 500, [departs(2, 900), through(1), arrives(0, 930)], hauledBy(0)),
    ]);
    const { turns } = scheduleOf(plan);
    expect(turns.filter(({ section }) => section === 1)).toHaveLength(1);
    // c is left as it is by the train that leaves it
    expect(turns.filter(({ section }) => section === 2).map(({ to }) => to)).toEqual([0, -1, 0]);
  });

  test("trains of one line get one output where the plan leaves a choice, so that nobody turns for nothing", () => {
    const past = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("x", M, [1]), analog("y", M, [1])];
    const plan = branch(past, [
      train("1", 500, [departs(0, 600), arrives(1, 610)], {
        ...hauledBy(0),
        placedMs: 590_000,
        removedMs: 611_000,
      }),
      train("2", 500, [departs(0, 900), arrives(1, 910)], {
        ...hauledBy(1),
        placedMs: 890_000,
        removedMs: 911_000,
      }),
      train("3", 500, [departs(2, 605), arrives(3, 615)], hauledBy(2)),
    ]);
    const compiled = compilePlan(plan);
    const { report } = sweepPlan(compiled).analog;
    expect(report.runs.map(({ train: index, output }) => [index, output])).toEqual([
      [0, 0],
      [2, 1],
      [1, 0],
    ]);
    expect(report.turns).toEqual({ made: 5, atLeast: 5 });
  });

  test("a turn off may wait until its output is another train's, a turn on be made once it is no longer", () => {
    const plan = branch(
      ROAD.map((each) => ({ ...each, outputs: [0] })),
      [
        train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0)),
        train("2", 500, [departs(2, 900), arrives(3, 910)], hauledBy(1)),
      ],
    );
    const { turns } = scheduleOf(plan);
    expect(turns.find(({ section, to }) => section === 1 && to < 0)?.mayMs).toEqual({
      startMs: 640_000,
      endMs: 840_000,
    });
    expect(turns.find(({ section }) => section === 2)?.mayMs).toEqual({ startMs: 640_000, endMs: 840_000 });
  });

  test("at one moment what is turned off comes first: the next train's output is free before it is on its section", () => {
    const plan = branch(
      ROAD.map((each) => ({ ...each, outputs: [0] })),
      [
        train("1", 500, [departs(2, 600), arrives(3, 610)], hauledBy(0)),
        train("2", 500, [departs(0, 700), arrives(1, 710)], hauledBy(1)),
      ],
    );
    const { turns } = scheduleOf(plan);
    const together = turns.filter(({ atMs }) => atMs === 640_000).map(({ section, to }) => [section, to]);
    expect(together).toEqual([
      [3, -1],
      [0, 0],
      [1, 0],
    ]);
  });

  test("two trains that want one section at one time get no schedule, and it says where", () => {
    const plan = compilePlan(
      branch(ROAD, [
        train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0)),
        train("2", 500, [departs(2, 600), arrives(1, 610)], hauledBy(1)),
      ]),
    );
    expect(makeSchedule(plan, sweepPlan(plan).analog.report)).toMatchObject({
      status: "contradicted",
      contradictions: [{ section: 1, trains: [0, 1] }],
    });
  });
});
