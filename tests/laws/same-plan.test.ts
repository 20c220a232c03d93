import { describe, expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Finding } from "../../src/planner/findings.ts";
import type { Problem } from "../../src/planner/problem.ts";
import type { CheckResult, LoadReport, NeedReport } from "../../src/planner/result.ts";
import { forRandomPlans, PATIENCE_MS } from "../oracle/plans.ts";
import { itemsOf } from "../oracle/stock.ts";
import {
  mixUp,
  renamed,
  shifted,
  shiftedSpan,
  withDistrictsAt,
  withOutputsAt,
  withSectionsAt,
  withTrainsAt,
  withUseless,
} from "./change-plan.ts";
import { tell } from "./told.ts";

describe("one plan told in two ways gets one answer", { timeout: PATIENCE_MS }, () => {
  test("everything later by the same time is found later by that time", () => {
    forRandomPlans("law of time", (problem) => {
      const byMs = 86_400_123;
      expect(check(shifted(problem, byMs))).toEqual(later(check(problem), byMs));
    });
  });

  test("names mean nothing", () => {
    forRandomPlans("law of names", (problem) => {
      expect(check(renamed(problem))).toEqual(check(problem));
    });
  });

  test("the order of the trains means nothing", () => {
    let skipped = 0;
    let compared = 0;
    forRandomPlans("law of train order", (problem) => {
      // whose stock goes on first is decided by position where all times are equal
      if (ties(problem)) {
        skipped++;
        return;
      }
      const mixed = withTrainsAt(problem, mixUp(problem.trains.length, 1));
      const { choices: _, ...told } = tell(mixed, check(mixed));
      const { choices: __, ...expected } = tell(problem, check(problem));
      expect(told).toEqual(expected);
      compared++;
    });
    expect(skipped).toBeLessThan(compared / 4);
  });

  test("the order of sections and links means nothing", () => {
    forRandomPlans("law of section order", (problem) => {
      const mixed = withSectionsAt(problem, mixUp(problem.sections.length, 2));
      expect(tell(mixed, check(mixed))).toEqual(tell(problem, check(problem)));
    });
  });

  test("the order of districts means nothing, that of outputs nothing but which of several will do is taken", () => {
    forRandomPlans("law of output order", (problem) => {
      const inOrder = withDistrictsAt(problem, mixUp(problem.districts.length, 1));
      const mixed = withOutputsAt(inOrder, mixUp(problem.outputs.length, 1));
      const { choices: _, ...told } = tell(mixed, check(mixed));
      const { choices: __, ...expected } = tell(problem, check(problem));
      expect(told).toEqual(expected);
    });
  });

  test("what nothing uses changes nothing", () => {
    forRandomPlans("law of the useless", (problem) => {
      const more = withUseless(problem);
      const [told, expected] = [tell(more, check(more)), tell(problem, check(problem))];
      expect(told.findings).toEqual(expected.findings);
      expect(told.occupations).toEqual(expected.occupations);
      expect(told.loads).toMatchObject(expected.loads);
      expect(told.runs).toEqual(expected.runs);
      expect(told.busy).toEqual(expected.busy);
      expect(told.choices).toEqual(expect.arrayContaining([...expected.choices]));
      const { outputs, ...needs } = expected.needs as Record<string, NeedReport>;
      expect(told.needs).toMatchObject(needs);
      // one more output in the club, which no selector reaches
      expect(told.needs.outputs).toMatchObject({ peak: outputs?.peak, stock: (outputs?.stock ?? 0) + 1 });
    });
  });
});

function ties({ trains }: Problem): boolean {
  return trains.some((a, at) =>
    trains.some(
      (b, other) =>
        other > at &&
        a.path[0]?.departMs === b.path[0]?.departMs &&
        a.path.at(-1)?.arriveMs === b.path.at(-1)?.arriveMs &&
        itemsOf(a).some((item) => itemsOf(b).includes(item)),
    ),
  );
}

function later(result: CheckResult, byMs: number): CheckResult {
  const at = (ms: number | null) => (ms === null ? null : ms + byMs);
  const curved = <T extends LoadReport | NeedReport>(report: T): T => ({
    ...report,
    peakAtMs: report.peakAtMs + byMs,
    curve: report.curve.map(([ms, value]) => [ms + byMs, value]),
  });
  const surging = (report: LoadReport): LoadReport => ({
    ...curved(report),
    stall: report.stall && { ...report.stall, atMs: report.stall.atMs + byMs },
    restart: report.restart && { ...report.restart, atMs: report.restart.atMs + byMs },
  });
  return {
    ...result,
    findings: result.findings.map(
      (finding): Finding => ({
        ...finding,
        span: shiftedSpan(finding.span, byMs),
        atMs: finding.atMs + byMs,
      }),
    ),
    occupations: result.occupations.map((occupation) => ({
      ...occupation,
      enterMs: at(occupation.enterMs),
      clearMs: at(occupation.clearMs),
      blocked: shiftedSpan(occupation.blocked, byMs),
    })),
    districts: result.districts.map(surging),
    supplies: result.supplies.map(curved),
    outputs: result.outputs.map(surging),
    controllers: result.controllers.map(curved),
    handsets: result.handsets.map(curved),
    analog: {
      ...result.analog,
      runs: result.analog.runs.map((run) => ({
        ...run,
        span: shiftedSpan(run.span, byMs),
        sectionSpans: run.sectionSpans.map((span) => shiftedSpan(span, byMs)),
      })),
      need: curved(result.analog.need),
    },
  };
}
