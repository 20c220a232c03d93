import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import { groupForRestart, type RestartUnit } from "../../src/planner/load/restart-groups.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { createLoadSampler, type Draw } from "./load.ts";
import { coveredMs } from "./load-samples.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

const locomotiveOf = (problem: Problem, { item }: Draw) =>
  item.startsWith("loco ") ? problem.locomotives[Number(item.slice(5))] : undefined;

/** As power returns: the inrush, where it is more than what is drawn from then on; nothing for an unlit rake. */
const inrushOf = (problem: Problem, draw: Draw): number => {
  const rake = problem.rakes[Number(draw.item.slice(5))];
  const stated = locomotiveOf(problem, draw)?.inrushMa ?? (rake && rake.lightingMa > 0 ? rake.inrushMa : 0);
  return Math.max(stated, draw.ma);
};

test("one stalled locomotive, and everything coming up at once, are at worst what every millisecond says", {
  timeout: PATIENCE_MS,
}, () => {
  let stalls = 0;
  let restarts = 0;
  forRandomPlans("surges", (problem) => {
    const { districts, findings } = check(problem, { mostFindings: 1_000_000 });
    const instants = coveredMs(problem);
    const byMs = instants.map(createLoadSampler(problem));
    problem.districts.forEach(({ breakerMa, tripDelayMs }, at) => {
      const here = byMs.map((all) => all[at] as Draw[]);
      const loads = here.map((draws) => draws.reduce((sum, { ma }) => sum + ma, 0));
      // design section 5: d(t) + the largest (stall − what it draws then) among the locomotives in d at t
      const stalled = here.map((draws, i) =>
        draws.reduce((most, draw) => {
          const locomotive = locomotiveOf(problem, draw);
          return locomotive ? Math.max(most, (loads[i] ?? 0) + locomotive.stallMa - draw.ma) : most;
        }, Number.NEGATIVE_INFINITY),
      );
      const worst = Math.max(...stalled);
      const { stall, restart } = districts[at] as (typeof districts)[number];
      if (worst === Number.NEGATIVE_INFINITY) expect(stall).toBeNull();
      else {
        expect(stall).toMatchObject({ ma: worst, atMs: instants[stalled.indexOf(worst)] });
        const culprits = (here[stalled.indexOf(worst)] ?? []).filter((draw) => {
          const locomotive = locomotiveOf(problem, draw);
          const load = loads[stalled.indexOf(worst)] ?? 0;
          return locomotive && load + locomotive.stallMa - draw.ma === worst;
        });
        expect(culprits.map(({ train, item }) => `${train} ${item}`)).toContain(
          `${stall?.train} loco ${stall?.locomotive}`,
        );
      }
      const inrush = here.map((draws) => draws.reduce((sum, draw) => sum + inrushOf(problem, draw), 0));
      const surge = Math.max(0, ...inrush);
      const isBrief = problem.policy.inrushMs <= tripDelayMs;
      const holds = surge <= breakerMa || (isBrief && (loads[inrush.indexOf(surge)] ?? 0) <= breakerMa);
      if (surge === 0) expect(restart).toBeNull();
      else expect(restart).toMatchObject({ inrushMa: surge, atMs: instants[inrush.indexOf(surge)], holds });

      const found = (code: string) =>
        findings.filter((finding) => finding.code === code && finding.districts.includes(at));
      const trips = Math.max(0, ...loads) > breakerMa;
      expect(found("district-trips-on-stall").map(({ measured, limit }) => [measured, limit])).toEqual(
        worst > breakerMa && !trips ? [[worst, breakerMa]] : [],
      );
      expect(found("district-trips-on-restart").map(({ measured, limit }) => [measured, limit])).toEqual(
        surge > breakerMa && !isBrief ? [[surge, breakerMa]] : [],
      );
      for (const { needed } of found("district-trips-on-restart"))
        expect(needed).toBe(restart?.groups?.length ?? null);
      stalls += found("district-trips-on-stall").length;
      restarts += found("district-trips-on-restart").length;
    });
  });
  expect(Math.min(stalls, restarts)).toBeGreaterThan(5);
});

describe("the groups in which a district comes up again", () => {
  /** Every way of putting the units one after the other into groups; what stays up must be borne too. */
  function fewestByTrying(units: readonly RestartUnit[], breakerMa: number, upMa = 0): number {
    if (units.length === 0) return 0;
    let fewest = Number.POSITIVE_INFINITY;
    for (let set = 1; set < 1 << units.length; set++) {
      const group = units.filter((_, i) => (set >> i) & 1);
      const rest = units.filter((_, i) => !((set >> i) & 1));
      const inrush = group.reduce((sum, { inrushMa }) => sum + inrushMa, upMa);
      const draws = group.reduce((sum, { drawsMa }) => sum + drawsMa, upMa);
      if (inrush > breakerMa || draws > breakerMa) continue;
      fewest = Math.min(fewest, 1 + fewestByTrying(rest, breakerMa, draws));
    }
    return fewest;
  }
  const unit = fc.record({
    inrushMa: fc.integer({ min: 0, max: 12 }),
    drawsMa: fc.integer({ min: 0, max: 5 }),
  });

  it("are the fewest that there are, and none where there is no way", () => {
    fc.assert(
      fc.property(fc.array(unit, { maxLength: 5 }), fc.integer({ min: 4, max: 24 }), (drawn, breakerMa) => {
        // nothing surges less than it draws
        const units = drawn.map(({ inrushMa, drawsMa }, train) => ({
          train,
          inrushMa: inrushMa + drawsMa,
          drawsMa,
        }));
        const { groups, proven } = groupForRestart(units, breakerMa);
        const fewest = fewestByTrying(units, breakerMa);
        expect(groups === null ? Number.POSITIVE_INFINITY : groups.length).toBe(fewest);
        expect(proven).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it("keep what is up and the inrush of the next within the breaker, however many there are", () => {
    fc.assert(
      fc.property(
        fc.array(unit, { minLength: 12, maxLength: 40 }),
        fc.integer({ min: 12, max: 80 }),
        (drawn, breakerMa) => {
          const units = drawn.map((one, train) => ({ train, ...one }));
          const { groups } = groupForRestart(units, breakerMa);
          let up = 0;
          for (const group of groups ?? []) {
            const members = units.filter(({ train }) => group.includes(train));
            expect(members.reduce((sum, { inrushMa }) => sum + inrushMa, up)).toBeLessThanOrEqual(breakerMa);
            up += members.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
          }
          if (groups) expect(groups.flat().sort((a, b) => a - b)).toEqual(units.map(({ train }) => train));
        },
      ),
      { numRuns: 100 },
    );
  });

  it("name a train that the breaker does not bear even alone", () => {
    expect(groupForRestart([{ train: 7, inrushMa: 3_100, drawsMa: 200 }], 3_000)).toEqual({
      groups: null,
      proven: true,
      tooBig: [7],
    });
  });
});
