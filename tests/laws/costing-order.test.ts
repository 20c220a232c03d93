import { expect, test } from "vitest";
import { costAllDigital } from "../../src/planner/costing/all-digital.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { forRandomPlans, PATIENCE_MS } from "../oracle/plans.ts";

/** The same railway with its sections written down from the last to the first. */
function turnedRound(problem: Problem): Problem {
  const to = (section: number) => problem.sections.length - 1 - section;
  return {
    ...problem,
    sections: problem.sections.toReversed(),
    links: problem.links.map((link) => ({ ...link, from: to(link.from), to: to(link.to) })),
    trains: problem.trains.map((train) => ({
      ...train,
      path: train.path.map((entry) => ({ ...entry, section: to(entry.section) })),
    })),
  };
}

test("a railway written down from its other end takes as many districts and boosters", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("costing in either order", (problem) => {
    const sizes = { breakerMa: 450, ratingMa: 900 };
    const one = costAllDigital(problem, sizes);
    const other = costAllDigital(turnedRound(problem), sizes);
    expect([other.districts.length, other.supplies.length, other.peakMa]).toEqual([
      one.districts.length,
      one.supplies.length,
      one.peakMa,
    ]);
  });
});
