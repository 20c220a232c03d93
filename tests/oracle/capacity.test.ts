import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import { journey, leavesPoint, reachesPoint, runsBackwards } from "./journey.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

test("a section is taken as long as its trains take, put down one right after the other", {
  timeout: PATIENCE_MS,
}, () => {
  let busy = 0;
  forRandomPlans("capacity", (plain) => {
    const problem = { ...plain, policy: { ...plain.policy, busyShare: 0.3 } };
    const { setUpMs, releaseMs } = problem.policy;
    const { capacity, findings } = check(problem, { mostFindings: 1_000_000 });
    const windowMs = problem.slot.endMs - problem.slot.startMs;
    problem.sections.forEach((section, at) => {
      const visits = problem.trains.flatMap((train) => {
        if (runsBackwards(train)) return [];
        const way = journey(problem, train);
        return train.path.flatMap((entry, i) => {
          if (entry.section !== at) return [];
          const enter = i === 0 ? way.startMs : (leavesPoint(way, way.begins[i] as number) as number);
          const clear = reachesPoint(way, (way.ends[i] as number) + train.lengthMm) ?? way.endMs;
          return [{ from: enter - setUpMs, until: clear + releaseMs }];
        });
      });
      // each starts when the one before it is gone
      let free = 0;
      for (const { from, until } of visits.sort((a, b) => a.from - b.from)) free += until - from;
      const told = capacity.find((one) => one.section === at);
      if (visits.length === 0) {
        expect(told).toBeUndefined();
        return;
      }
      expect(told).toMatchObject({ trains: visits.length, busyMs: free, share: free / windowMs });
      const shared = section.shared && section.control === "digital";
      const expected =
        !shared && free / windowMs > 0.3 ? [Math.round((free / windowMs) * 1_000) / 1_000] : [];
      const found = findings.filter(
        ({ code, sections }) => code === "section-too-busy" && sections[0] === at,
      );
      expect(found.map(({ measured }) => measured)).toEqual(expected);
      busy += found.length;
    });
  });
  expect(busy).toBeGreaterThan(50);
});
