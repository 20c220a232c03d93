import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { journey, runsBackwards } from "./journey.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

/** The plan with speed limits that its trains, hundreds of km/h fast, often pass. */
function withLimits(problem: Problem): Problem {
  let state = problem.trains.reduce((sum, { lengthMm, path }) => sum * 31 + lengthMm + path.length, 13);
  const limit = () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return [0, 0, 200, 450, 900][(state >> 8) % 5] as number;
  };
  return {
    ...problem,
    sections: problem.sections.map((one) => ({ ...one, maxSpeedKmh: limit() })),
    locomotives: problem.locomotives.map((one) => ({ ...one, maxSpeedKmh: limit() })),
  };
}

/** Prototype km/h by its definition (design section 3), a little below which nothing counts as too fast. */
const TOLERANCE_KMH = 0.05;

test("a run is too fast where, for any half millimetre of it, the train is in a section that is slower", {
  timeout: PATIENCE_MS,
}, () => {
  let found = 0;
  forRandomPlans("speed limits", (plain) => {
    const problem = withLimits(plain);
    const told = check(problem, { mostFindings: 1_000_000 })
      .findings.filter(({ code }) => code === "path-too-fast")
      .map(({ trains, span, limit, sections }) =>
        JSON.stringify([trains[0], span.startMs, limit, [...sections].sort((a, b) => a - b)]),
      );
    const expected = problem.trains.flatMap((train, at) => {
      if (runsBackwards(train)) return [];
      const { begins, ends, stops } = journey(problem, train);
      const ofPower = train.power
        .map(({ locomotive }) => problem.locomotives[locomotive]?.maxSpeedKmh ?? 0)
        .filter((kmh) => kmh > 0);
      return stops.slice(1).flatMap((next, i) => {
        const from = stops[i] as typeof next;
        const under = new Set<number>();
        for (let head = from.atMm + 0.5; head < next.atMm; head++)
          for (const [entry, { section }] of train.path.entries())
            if (head > (begins[entry] as number) && head - train.lengthMm < (ends[entry] as number))
              under.add(section);
        const slow = [...under].filter((one) => (problem.sections[one]?.maxSpeedKmh ?? 0) > 0);
        const limits = slow.map((one) => problem.sections[one]?.maxSpeedKmh ?? 0);
        const limit = Math.min(...ofPower, ...limits);
        const mmPerS = ((next.atMm - from.atMm) * 1_000) / (next.arriveMs - from.departMs);
        const kmh = (mmPerS * problem.scale * 3_600) / 1_000_000;
        if (kmh <= limit + TOLERANCE_KMH) return [];
        const setting = slow.filter((one) => problem.sections[one]?.maxSpeedKmh === limit);
        return [JSON.stringify([at, from.departMs, limit, setting.sort((a, b) => a - b)])];
      });
    });
    expect(told.sort()).toEqual(expected.sort());
    found += told.length;
  });
  expect(found).toBeGreaterThan(200);
});
