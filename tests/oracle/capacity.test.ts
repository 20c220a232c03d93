import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Problem } from "../../src/planner/problem.ts";
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
      // of each train the milliseconds in which it takes the section, those that it takes it for twice once
      let visits = 0;
      const taken = problem.trains.map((train) => {
        const all = new Set<number>();
        if (runsBackwards(train)) return all;
        const ends: number[] = [];
        const way = journey(problem, train);
        for (const [i, entry] of train.path.entries()) {
          if (entry.section !== at) continue;
          const enter = i === 0 ? way.startMs : (leavesPoint(way, way.begins[i] as number) as number);
          const clear = reachesPoint(way, (way.ends[i] as number) + train.lengthMm) ?? way.endMs;
          for (let ms = enter - setUpMs; ms < clear + releaseMs; ms++) all.add(ms);
          // a visit of its own where the train has been away
          if (!ends.some((end) => end >= enter - setUpMs)) visits++;
          ends.push(clear + releaseMs);
        }
        return all;
      });
      // each starts when the one before it is gone
      const free = taken.reduce((sum, { size }) => sum + size, 0);
      const told = capacity.find((one) => one.section === at);
      if (visits === 0) {
        expect(told).toBeUndefined();
        return;
      }
      expect(told).toMatchObject({ trains: visits, busyMs: free, share: free / windowMs });
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

interface Visit {
  readonly train: number;
  readonly from: number;
  readonly until: number;
}

/** Boxes of trains on their way by section, of sections that take one train. */
function boxes(problem: Problem): Visit[][] {
  const { setUpMs, releaseMs } = problem.policy;
  const bySection: Visit[][] = problem.sections.map(() => []);
  for (const [train, each] of problem.trains.entries()) {
    if (runsBackwards(each)) continue;
    const way = journey(problem, each);
    for (const [i, { section }] of each.path.entries()) {
      const enter = i === 0 ? way.startMs : (leavesPoint(way, way.begins[i] as number) as number);
      const clear = reachesPoint(way, (way.ends[i] as number) + each.lengthMm) ?? way.endMs;
      bySection[section]?.push({ train, from: enter - setUpMs, until: clear + releaseMs });
    }
  }
  return bySection;
}

test("all trains pushed together as wholes take as long as the longest chain of those that follow each other", {
  timeout: PATIENCE_MS,
}, () => {
  let shorter = 0;
  forRandomPlans("pushed together", (problem) => {
    const visits = boxes(problem);
    const count = problem.trains.length;
    const start = problem.trains.map((_, train) =>
      Math.min(...visits.flat().flatMap((one) => (one.train === train ? [one.from] : []))),
    );
    const end = problem.trains.map((_, train) =>
      Math.max(...visits.flat().flatMap((one) => (one.train === train ? [one.until] : []))),
    );
    // the longest way from every train to every other, by way of every third
    const apart = start.map((_, a) => start.map((_, b) => (a === b ? 0 : Number.NEGATIVE_INFINITY)));
    const atLeast = (a: number, b: number, ms: number) => {
      const row = apart[a] as number[];
      row[b] = Math.max(row[b] as number, ms);
    };
    visits.forEach((all, at) => {
      const section = problem.sections[at];
      if (section?.shared && section.control === "digital") return;
      const inOrder = all.sort((a, b) => a.from - b.from || a.until - b.until);
      for (const [i, next] of inOrder.entries()) {
        const one = inOrder[i - 1];
        if (!one || one.train === next.train) continue;
        const planned = (start[next.train] as number) - (start[one.train] as number);
        if (one.until <= next.from) atLeast(one.train, next.train, planned - (next.from - one.until));
        else {
          atLeast(one.train, next.train, planned);
          atLeast(next.train, one.train, -planned);
        }
      }
    });
    for (let by = 0; by < count; by++)
      for (let a = 0; a < count; a++)
        for (let b = 0; b < count; b++)
          atLeast(a, b, (apart[a]?.[by] as number) + (apart[by]?.[b] as number));
    let taken = 0;
    for (let b = 0; b < count; b++) {
      if (start[b] === Number.POSITIVE_INFINITY) continue;
      const begins = Math.max(0, ...apart.map((row) => row[b] as number));
      taken = Math.max(taken, begins + (end[b] as number) - (start[b] as number));
    }
    const { ms, share } = check(problem).pushedTogether;
    expect(ms).toBe(taken);
    expect(share).toBe(taken / (problem.slot.endMs - problem.slot.startMs));
    if (taken < Math.max(0, ...end) - Math.min(...start)) shorter++;
  });
  expect(shorter).toBeGreaterThan(50);
});
