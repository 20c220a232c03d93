import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { AnalogReport } from "../../../src/planner/result.ts";
import { judgeAssignment } from "../../../src/planner/verify/judge-assignment.ts";
import { arrives, calls, departs, through, train } from "../small-problem.ts";
import { analog, branch, hauledBy } from "./branch.ts";

// Common practice of the trade under independent (analog) control; no published source.

const M = 1_000;
const ROAD = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("c", M, [0, 1]), analog("d", M, [0, 1])];

describe("common practice", () => {
  test("one train to an isolating section", () => {
    const first = train("1", 500, [departs(0, 600), arrives(1, 610)]);
    const second = train("2", 500, [departs(2, 600), arrives(1, 610)]);
    expect(check(branch(ROAD, [first, second])).findings).toMatchObject([
      { code: "section-clash", sections: [1], trains: [0, 1] },
    ]);
  });

  test("a train across a gap has both its sections on one and the same output", () => {
    const plan = branch(ROAD, [train("1", 800, [departs(0, 600), through(1), through(2), arrives(3, 630)])]);
    const [run] = check(plan).analog.runs;
    expect(run?.sections).toEqual([0, 1, 2, 3]);
    for (let ms = 600_000; ms < 630_000; ms += 500) {
      const fed = run?.sectionSpans.filter(({ startMs, endMs }) => startMs <= ms && ms < endMs) ?? [];
      expect(fed.length).toBeGreaterThan(0);
    }
    expect(run?.candidates).toContain(run?.output);
  });

  test("where two neighbouring sections have no output in common, no train can cross the gap", () => {
    const gap = [analog("a", M, [0]), analog("b", M, [1])];
    const { findings } = check(branch(gap, [train("1", 500, [departs(0, 600), arrives(1, 610)])]));
    expect(findings).toMatchObject([{ code: "output-none-reaches", sections: [0, 1] }]);
  });

  test("a selector stands in one position at a time: no section ever has two outputs", () => {
    const trains = [
      train("1", 500, [departs(0, 600), through(1), calls(2, 620, 660), arrives(3, 670)], hauledBy(0)),
      train("2", 500, [departs(3, 760), through(2), through(1), arrives(0, 790)], hauledBy(0)),
    ];
    const plan = branch(ROAD, trains);
    const { analog: report } = check(plan);
    expect(positionsAtOnce(report)).toBe(1);
    expect(judgeAssignment(plan, report)).toEqual([]);
  });

  test("and has a true off: before, between and after its trains a section is fed by none", () => {
    const plan = branch(ROAD, [
      train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0)),
      train("2", 500, [departs(1, 900), arrives(2, 910)], hauledBy(0)),
    ]);
    const fed = feeds(check(plan).analog).filter(({ section }) => section === 1);
    expect(fed.map(({ startMs, endMs }) => [startMs, endMs])).toEqual([
      [595_000, 640_000],
      [840_000, 910_000],
    ]);
  });

  test("parked locomotives stand in sections switched off, and draw nothing", () => {
    const plan = branch(ROAD, [train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(0))]);
    const { analog: report, outputs } = check(plan);
    const after = 640_000;
    expect(feeds(report).filter(({ endMs }) => endMs > after)).toEqual([]);
    expect(outputs[0]?.curve.at(-1)).toEqual([610_000, 0]);
  });

  test("an output's own limit counts every locomotive on it: double heading adds currents", () => {
    const headed = (...locomotives: number[]) =>
      check(branch(ROAD, [train("1", 500, [departs(0, 600), arrives(1, 610)], hauledBy(...locomotives))]));
    expect(headed(0).outputs[0]?.peakMa).toBe(400);
    expect(headed(1).outputs[0]?.peakMa).toBe(500);
    expect(headed(0, 1).outputs[0]?.peakMa).toBe(900);
    expect(headed(0, 2).findings).toMatchObject([
      { code: "output-over-rating", measured: 1_100, limit: 1_000 },
    ]);
  });
});

function feeds({ runs }: AnalogReport) {
  return runs.flatMap((run) =>
    run.sections.map((section, i) => ({
      section,
      output: run.output,
      startMs: run.sectionSpans[i]?.startMs ?? 0,
      endMs: run.sectionSpans[i]?.endMs ?? 0,
    })),
  );
}

function positionsAtOnce(report: AnalogReport): number {
  const all = feeds(report);
  const at = (section: number, ms: number) =>
    all.filter((feed) => feed.section === section && feed.startMs <= ms && ms < feed.endMs).length;
  return Math.max(...all.map(({ section, startMs }) => at(section, startMs)));
}
