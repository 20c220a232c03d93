import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import type { AnalogReport, AnalogRun } from "../../../src/planner/result.ts";
import { judgeAssignment } from "../../../src/planner/verify/judge-assignment.ts";
import { judgeCore } from "../../../src/planner/verify/judge-core.ts";
import { analog, branch } from "../analog/branch.ts";
import { arrives, calls, departs, section, through, train } from "../small-problem.ts";

const M = 1_000;
const plan = branch(
  [
    section("main", M),
    section("x", M, { control: "changeover", outputs: [0, 1] }),
    analog("a", M, [0, 1]),
    analog("b", M, [0, 1]),
    analog("c", M, [0, 1]),
    analog("d", M, [0]),
  ],
  [
    train("1", 500, [departs(0, 600), calls(1, 610, 650), through(2), calls(3, 670, 700), arrives(4, 710)]),
    train("2", 500, [departs(5, 600), arrives(4, 610)]),
  ],
);
const good = check(plan).analog;

describe("the judge of an assignment", () => {
  test("finds nothing wrong with a good one", () => {
    expect(good.status).toBe("assigned");
    expect(good.runs).toHaveLength(3);
    expect(judgeAssignment(plan, good)).toEqual([]);
  });

  test("says when an output does not reach", () => {
    expect(kinds(change(good, runOf(1), { output: 1 }))).toContain("output-does-not-reach");
  });

  test("says when an output is switched to a digital section", () => {
    const run = good.runs[runOf(0)] as AnalogRun;
    const more = { sections: [...run.sections, 0], sectionSpans: [...run.sectionSpans, run.span] };
    const reached = withSection(plan, 0, { outputs: [0, 1] });
    const faults = judgeAssignment(reached, change(good, runOf(0), more));
    expect(faults).toMatchObject([{ kind: "output-in-digital-section", section: 0 }]);
  });

  test("says when one output drives two trains", () => {
    const all = good.runs.map((run) => ({ ...run, output: 0 }));
    expect(kinds({ ...good, runs: all })).toContain("two-trains-on-output");
  });

  test("says when a section has two outputs at once", () => {
    const late = good.runs[runOf(1)] as AnalogRun;
    const longer = {
      sectionSpans: late.sectionSpans.map((span) => ({ ...span, endMs: 740_000 })),
      span: { ...late.span, endMs: 740_000 },
    };
    const apart = { ...good, runs: good.runs.map((run) => (run.train === 0 ? { ...run, output: 1 } : run)) };
    expect(kinds(apart)).toEqual([]);
    expect(kinds(change(apart, runOf(1), longer))).toEqual(["two-outputs-in-section"]);
  });

  test("says when a moving train comes to a section that is not fed, or no longer", () => {
    for (const [at, run] of good.runs.entries())
      for (const [i, span] of run.sectionSpans.entries()) {
        const { startMs, endMs } = span;
        // so late that the head is in it, past the longest lead of 60 s; so short that the tail is, past the 30 s
        // of hand-in
        const late = { startMs: startMs + 75_000, endMs };
        const short = { startMs, endMs: endMs - 45_000 };
        for (const wrong of [late, short]) {
          const sectionSpans = run.sectionSpans.map((good, j) => (j === i ? wrong : good));
          expect(kinds(change(good, at, { sectionSpans }))).toContain("moves-unfed");
        }
      }
  });

  test("says when a train changes outputs where it does not stand long enough", () => {
    const hasty = { ...plan, policy: { ...plan.policy, releaseDwellMs: 40_000 } };
    expect(judgeAssignment(hasty, good)).toMatchObject([{ kind: "moves-unfed", train: 0 }]);
  });

  test("does not judge trains that were left without an output", () => {
    const none = good.runs.map((run) => ({ ...run, output: -1 }));
    expect(judgeAssignment(plan, { ...good, runs: none })).toEqual([]);
  });
});

describe("the judge of a proof", () => {
  const roads = Array.from({ length: 8 }, (_, at) => analog(`r${at}`, M, at < 6 ? [0, 1] : [0]));
  const shuttle = (at: number, second: number) =>
    train(`${at}`, 500, [departs(2 * at, second), arrives(2 * at + 1, second + 10)]);
  const crowded = branch(roads, [shuttle(0, 600), shuttle(1, 605), shuttle(2, 610), shuttle(3, 900)]);
  const { analog: report } = check(crowded);

  test("accepts a proof in which every run is needed", () => {
    expect(judgeCore(crowded, report, 1_000)).toBe("proven");
  });

  test("refuses one with a run to spare", () => {
    expect(judgeCore(crowded, { ...report, core: [0, 1, 2, 3] }, 1_000)).toBe("one-to-spare");
  });

  test("refuses one that can be served", () => {
    expect(judgeCore(crowded, { ...report, core: [0, 1] }, 1_000)).toBe("servable");
    expect(judgeCore(crowded, { ...report, core: [] }, 1_000)).toBe("servable");
  });

  test("says when it would have to try too much", () => {
    expect(judgeCore(crowded, report, 3)).toBe("not-judged");
  });
});

function kinds(report: AnalogReport): string[] {
  return judgeAssignment(plan, report).map(({ kind }) => kind);
}

/** The one run of a train, or its first. */
function runOf(trainIndex: number): number {
  return good.runs.findIndex((run) => run.train === trainIndex);
}

function change(report: AnalogReport, at: number, by: Partial<AnalogRun>): AnalogReport {
  return { ...report, runs: report.runs.map((run, i) => (i === at ? { ...run, ...by } : run)) };
}

function withSection(problem: Problem, at: number, by: Partial<Problem["sections"][number]>): Problem {
  return { ...problem, sections: problem.sections.map((each, i) => (i === at ? { ...each, ...by } : each)) };
}
