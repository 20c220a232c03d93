import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/planner/problem.ts";
import { judgeSchedule } from "../../../src/planner/verify/judge-schedule.ts";
import type { TurnToJudge } from "../../../src/planner/verify/selector-positions.ts";
import { analog, branch, hauledBy } from "../analog/branch.ts";
import { scheduleOf } from "../selectors/schedule.ts";
import { arrives, calls, departs, policyWith, section, through, train } from "../small-problem.ts";

const M = 1_000;
const SECTIONS = [
  section("main", M),
  section("x", M, { control: "changeover", outputs: [0, 1] }),
  analog("a", M, [0, 1]),
  analog("b", M, [0, 1]),
  analog("c", M, [0, 1]),
  analog("d", M, [0]),
];
/** Train 1 comes from the digital main line and is changed over in x; train 2 runs twice on d and c. */
const plan = branch(SECTIONS, [
  train("1", 500, [departs(0, 600), calls(1, 610, 650), through(2), arrives(3, 670)], hauledBy(0)),
  train("2", 500, [departs(5, 600), calls(4, 610, 700), arrives(5, 710)], hauledBy(1)),
]);
const good = scheduleOf(plan).turns;

describe("the judge of a schedule", () => {
  test("finds nothing wrong with a good one", () => {
    expect(good.length).toBeGreaterThan(5);
    expect(judgeSchedule(plan, good)).toEqual([]);
  });

  test("says when a turn that is needed is left out, whichever it is", () => {
    for (const left of good)
      expect(
        judgeSchedule(
          plan,
          good.filter((turn) => turn !== left),
        ),
        JSON.stringify(left),
      ).not.toEqual([]);
  });

  test("says when a selector cannot stand where it is turned to", () => {
    expect(kinds(changed(5, { to: 1 }))).toContain("selector-does-not-reach");
    expect(kinds([...good, { section: 0, to: 0, atMs: 0 }])).toContain("selector-does-not-reach");
  });

  test("says when a turn changes nothing, and when two of one section are at one instant", () => {
    expect(kinds([...good, { section: 2, to: -1, atMs: 0 }])).toContain("turned-to-where-it-is");
    expect(kinds([...good, { section: 2, to: 0, atMs: 0 }, { section: 2, to: -1, atMs: 0 }])).toContain(
      "turned-twice-at-once",
    );
  });

  test("says when a selector is turned from one output to another under a train that runs", () => {
    const now = good.find(({ section: at }) => at === 2)?.to ?? 0;
    expect(kinds([...good, { section: 2, to: 1 - now, atMs: 656_000 }])).toContain("turned-in-use");
  });

  test("says when a train runs into a section that nothing feeds, or another output feeds", () => {
    expect(kinds(good.filter(({ section: at }) => at !== 2))).toContain("moves-unfed");
    const now = good.find(({ section: at }) => at === 2)?.to ?? 0;
    expect(kinds(changed(2, { to: 1 - now }))).toContain("two-outputs-under-train");
  });

  test("says when one output drives two trains", () => {
    const two = branch(ROAD, [
      train("1", 500, [departs(0, 600), arrives(1, 620)], hauledBy(0)),
      train("2", 500, [departs(2, 600), arrives(3, 620)], hauledBy(1)),
    ]);
    const all = scheduleOf(two).turns.map((turn) => ({ ...turn, to: Math.min(turn.to, 0) }));
    expect(judgeSchedule(two, all).map(({ kind }) => kind)).toContain("two-trains-on-output");
  });

  test("says when parked stock stands in a section that is on, and when it is another train's output", () => {
    const one = branch(ROAD, [
      train("1", 500, [departs(0, 600), arrives(1, 620)], hauledBy(0)),
      train("2", 500, [departs(2, 900), arrives(3, 920)], hauledBy(1)),
    ]);
    const on = scheduleOf(one).turns.filter(({ section: at, to }) => at !== 1 || to >= 0);
    const faults = judgeSchedule(one, on).filter(({ section: at }) => at === 1);
    expect(faults.map(({ kind }) => kind)).toContain("parked-stock-fed");
    expect(faults.map(({ kind }) => kind)).toContain("parked-stock-driven");
  });

  test("says when an output stays on a section that a digital supply then feeds", () => {
    const first = good.find(({ section: at }) => at === 1);
    const early = good.map((turn) => (turn === first ? { ...turn, atMs: 605_000 } : turn));
    expect(kinds(early)).toContain("output-meets-digital");
  });

  test("lets a section be off that a train has left and comes back into", () => {
    // the train just fits into b, where it turns back; its locomotive's mate is left behind in a
    const mates = hauledBy(0, 1);
    const back = branch(
      ROAD.slice(0, 2),
      [
        train("1", 900, [departs(1, 500), arrives(0, 510)], mates),
        train("2", 1_000, [departs(0, 600), calls(1, 610, 630), arrives(0, 640)], hauledBy(0)),
      ],
      { policy: policyWith({ setUpMs: 0, releaseMs: 0, pickUpMs: 0, handInMs: 0 }) },
    );
    const { turns } = scheduleOf(back);
    expect(turns.filter(({ section: at }) => at === 0).map(({ atMs, to }) => [atMs / 1_000, to < 0])).toEqual(
      [
        [500, false],
        [510, true],
        [600, false],
        [610, true],
        [630, false],
        [640, true],
      ],
    );
    expect(judgeSchedule(back, turns)).toEqual([]);
  });

  test("says when an output does not bear a train that another would", () => {
    const weak: Problem = {
      ...plan,
      outputs: plan.outputs.map((each, at) => ({ ...each, ratingMa: at === 0 ? 450 : 1_000 })),
    };
    const turns = scheduleOf(plan).turns.map((turn) =>
      turn.section > 3 ? turn : { ...turn, to: Math.min(turn.to, 0) },
    );
    // train 1 draws 400 mA, train 2 500 mA on d, which only the first output reaches
    expect(judgeSchedule(weak, turns).map(({ kind }) => kind)).not.toContain("output-over-rating");
    const heavy = { ...weak, trains: weak.trains.map((each) => ({ ...each, ...hauledBy(2) })) };
    expect(judgeSchedule(heavy, turns).map(({ kind }) => kind)).toContain("output-over-rating");
  });
});

const ROAD = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("c", M, [0, 1]), analog("d", M, [0, 1])];

function kinds(turns: readonly TurnToJudge[]): string[] {
  return judgeSchedule(plan, turns).map(({ kind }) => kind);
}

/** The good schedule with the first turn of a section changed. */
function changed(at: number, given: Partial<TurnToJudge>): TurnToJudge[] {
  const first = good.find(({ section: index }) => index === at);
  return good.map((turn) => (turn === first ? { ...turn, ...given } : turn));
}
