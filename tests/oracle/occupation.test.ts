import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import { clashes, crowds, occupations } from "./occupation.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

test("sections are occupied exactly as a train stepped through every millisecond occupies them", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("occupation", (problem) => {
    const byPlace = (a: { train: number; pathEntry: number }, b: { train: number; pathEntry: number }) =>
      a.train - b.train || a.pathEntry - b.pathEntry;
    expect([...check(problem).occupations].sort(byPlace)).toEqual(occupations(problem).sort(byPlace));
  });
});

test("trains of different stock clash exactly where comparing all pairs finds them together", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("clashes", (problem) => {
    const found = check(problem).findings.filter(({ code }) => code === "section-clash");
    const told = found.map(({ trains, sections, span }) => ({ trains, sections, span }));
    expect(sorted(told)).toEqual(sorted(clashes(problem)));
  });
});

test("a shared section is too full exactly when looking at every millisecond says so", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("shared sections", (problem) => {
    const found = check(problem).findings.filter(({ code }) => code === "shared-section-too-full");
    const told = found.map(({ sections, span, measured, trains }) => ({
      section: sections[0],
      span,
      mostMm: measured,
      trains,
    }));
    expect(sorted(told)).toEqual(sorted(crowds(problem)));
  });
});

function sorted<T>(list: readonly T[]): string[] {
  return list.map((item) => JSON.stringify(item)).sort();
}
