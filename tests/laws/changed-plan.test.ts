import { describe, expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Finding } from "../../src/planner/findings.ts";
import type { Problem, Section } from "../../src/planner/problem.ts";
import type { CheckResult, Occupation } from "../../src/planner/result.ts";
import { forRandomPlans, PATIENCE_MS } from "../oracle/plans.ts";
import { arrives, departs, section, smallProblem, train } from "../planner/small-problem.ts";
import { split } from "./change-plan.ts";

/** Plans on which a law has something to say, at the least, of those that it sees. */
const MANY = 100;

describe("a change of the plan changes what it must and nothing else", { timeout: PATIENCE_MS }, () => {
  test("a section cut in two is taken from when it was to when it was, and nothing else moves", () => {
    let cut = 0;
    let drivenAlike = 0;
    forRandomPlans("law of the cut", (problem) => {
      const at = problem.sections.findIndex(
        ({ control, lengthMm }) => lengthMm > 1 && control !== "changeover" && control !== "dead",
      );
      if (at < 0) return;
      const before = check(problem);
      const after = check(split(problem, at, Math.ceil((problem.sections[at] as Section).lengthMm / 3)));
      expect(throughEntries(problem, at, after)).toEqual(throughEntries(problem, at, before));
      // the pieces hang on the same feeds, so nothing that is fed or driven notices
      const fed = ["districts", "supplies", "handsets"] as const;
      // which run goes without depends on what the proof's sections are, and which outputs spare most turns on how
      // many selectors a run passes: a cut section has two
      const isAlike = before.analog.runs.every(
        ({ output }, run) => output === after.analog.runs[run]?.output,
      );
      // a train any of whose stock goes on as another hands its road on, of a cut one each piece; its lit coaches go by that
      const driven = isAlike && !handsLitRoadOn(problem) ? (["outputs", "controllers"] as const) : [];
      if (driven.length > 0 && before.analog.runs.length > 1) drivenAlike++;
      for (const kind of [...fed, ...driven]) expect(after[kind]).toEqual(before[kind]);
      const runs = ({ analog }: CheckResult) =>
        analog.runs.map(({ train, span, candidates, runningMa }) => ({ train, span, candidates, runningMa }));
      expect(runs(after)).toEqual(runs(before));
      expect(after.analog.status).toBe(before.analog.status);
      cut++;
    });
    expect(cut).toBeGreaterThan(MANY);
    expect(drivenAlike).toBeGreaterThan(MANY / 4);
  });

  test("a breaker at the peak of its district holds, one just below it trips: that and no other finding", () => {
    forRandomPlans("law of the breaker", (problem) => {
      check(problem).districts.forEach(({ peakMa }, at) => {
        const limited = (breakerMa: number) =>
          loadFindings(withItem(noReserve(problem), "districts", at, { breakerMa }), "districts", at);
        expect(limited(peakMa)).toEqual([]);
        if (peakMa > 0) expect(limited(peakMa - 1)).toMatchObject([trips("district-will-trip", peakMa)]);
      });
    });
  });

  test("a supply rated at its peak carries it, one rated just below does not", () => {
    forRandomPlans("law of the supply", (problem) => {
      check(problem).supplies.forEach(({ peakMa }, at) => {
        const limited = (ratingMa: number) =>
          loadFindings(withItem(noReserve(problem), "supplies", at, { ratingMa }), "supplies", at);
        expect(limited(peakMa)).toEqual([]);
        if (peakMa > 0) expect(limited(peakMa - 1)).toMatchObject([trips("supply-over-rating", peakMa)]);
      });
    });
  });

  test("a transformer rated at its peak carries it, one rated just below does not", () => {
    let loaded = 0;
    forRandomPlans("law of the transformer", (problem) => {
      const before = check(problem);
      const outputsOf = ({ analog }: typeof before) => analog.runs.map(({ output }) => output);
      before.controllers.forEach(({ peakMa }, at) => {
        const limited = (transformerMa: number) =>
          loadFindings(withItem(noReserve(problem), "controllers", at, { transformerMa }), "controllers", at);
        expect(limited(peakMa)).toEqual([]);
        // of outputs that work alike, those may be chosen that a weaker transformer bears
        const weaker = withItem(noReserve(problem), "controllers", at, { transformerMa: peakMa - 1 });
        if (peakMa === 0 || `${outputsOf(check(weaker))}` !== `${outputsOf(before)}`) return;
        expect(limited(peakMa - 1)).toMatchObject([trips("controller-over-rating", peakMa)]);
        loaded++;
      });
    });
    expect(loaded).toBeGreaterThan(MANY);
  });

  test("an output that is the only one carries a train at its rating, and is overloaded just below", () => {
    let loaded = 0;
    forRandomPlans("law of the output", (problem) => {
      const one = {
        ...noReserve(problem),
        outputs: problem.outputs.slice(0, 1),
        sections: problem.sections.map((section) => ({
          ...section,
          outputs: section.outputs.filter((output) => output === 0),
        })),
      };
      const peakMa = check(one).outputs[0]?.peakMa ?? 0;
      const limited = (ratingMa: number) =>
        loadFindings(withItem(one, "outputs", 0, { ratingMa }), "outputs", 0);
      expect(limited(peakMa)).toEqual([]);
      if (peakMa === 0) return;
      expect(limited(peakMa - 1)).toMatchObject([trips("output-over-rating", peakMa)]);
      loaded++;
    });
    expect(loaded).toBeGreaterThan(MANY);
  });

  test("the reserve is eaten into just above its line, not at it", () => {
    let loaded = 0;
    forRandomPlans("law of the reserve", (problem) => {
      const half = { ...problem, policy: { ...problem.policy, reserve: 0.5 } };
      check(half).districts.forEach(({ peakMa }, at) => {
        const limited = (breakerMa: number) =>
          loadFindings(withItem(half, "districts", at, { breakerMa }), "districts", at);
        expect(limited(2 * peakMa)).toEqual([]);
        if (peakMa < 2) return;
        const close = {
          code: "district-too-close",
          severity: "warns",
          measured: peakMa,
          limit: peakMa - 0.5,
        };
        expect(limited(2 * peakMa - 1)).toMatchObject([close]);
        loaded++;
      });
    });
    expect(loaded).toBeGreaterThan(MANY);
  });

  test("as many handsets as the peak needs are enough, one fewer is one too few", () => {
    forRandomPlans("law of the handsets", (problem) => {
      check(problem).handsets.forEach(({ peak }, at) => {
        const found = (handsets: number) =>
          check(withItem(problem, "commandSystems", at, { handsets })).findings.filter(
            ({ code, commandSystems }) => code === "handsets-too-few" && commandSystems[0] === at,
          );
        expect(found(peak)).toEqual([]);
        if (peak > 0) expect(found(peak - 1)).toMatchObject([{ measured: peak, limit: peak - 1 }]);
      });
    });
  });

  test("what is too full with several trains is not with any one of them alone", () => {
    let full = 0;
    forRandomPlans("law of the crowd", (problem) => {
      const tooFull = (plan: Problem) =>
        check(plan).findings.filter(({ code }) => code === "shared-section-too-full");
      for (const { sections, trains, measured, limit } of tooFull(problem)) {
        expect(trains.length).toBeGreaterThan(1);
        expect(measured).toBeGreaterThan(limit as number);
        expect(limit).toBe(problem.sections[sections[0] as number]?.lengthMm);
        for (const train of trains) {
          const alone = { ...problem, trains: problem.trains.filter((_, index) => index === train) };
          expect(tooFull(alone)).toEqual([]);
        }
        full++;
      }
    });
    expect(full).toBeGreaterThan(MANY / 4);
  });

  test("trains fill a shared section to its last millimetre before they are too many", () => {
    const crowds = (lengthMm: number) => {
      const sections = [section("yard", lengthMm, { shared: true }), section("out", 3_000)];
      const trains = [400, 600].map((mm, at) =>
        train(`${at}`, mm, [departs(0, 1_000 * (at + 1)), arrives(1, 2_500)]),
      );
      return check(smallProblem({ sections, trains })).findings.filter(
        ({ code }) => code === "shared-section-too-full",
      );
    };
    expect(crowds(1_000)).toEqual([]);
    expect(crowds(999)).toMatchObject([{ measured: 1_000, limit: 999, trains: [0, 1] }]);
  });

  test("longer set-up and release never make a meeting on a section go away", () => {
    forRandomPlans("law of caution", (problem) => {
      const { setUpMs, releaseMs } = problem.policy;
      const careful = {
        ...problem,
        policy: { ...problem.policy, setUpMs: setUpMs + 3, releaseMs: releaseMs + 4 },
      };
      const clashes = (plan: Problem) => check(plan).findings.filter(({ code }) => code === "section-clash");
      const later = clashes(careful);
      for (const { trains, sections, span } of clashes(problem))
        expect(
          later.some(
            (other) =>
              String(other.trains) === String(trains) &&
              sections.every((section) => other.sections.includes(section)) &&
              other.span.startMs <= span.startMs &&
              other.span.endMs >= span.endMs,
          ),
        ).toBe(true);
    });
  });
});

/**
 * Occupations of the other sections, and of section `at` from the first of its pieces to the second, by train and
 * path entry of the whole plan.
 */
function throughEntries(problem: Problem, at: number, result: CheckResult): unknown[] {
  const first = problem.sections.length;
  const byTrain = problem.trains.map((_, train) =>
    result.occupations.filter((each) => each.train === train).sort((a, b) => a.pathEntry - b.pathEntry),
  );
  return byTrain.map((occupations) =>
    occupations.flatMap((occupation, i): Partial<Occupation>[] => {
      const { section, enterMs, clearMs, blocked } = occupation;
      if (section === first) return [];
      const opening = occupations[i - 1]?.section === first ? occupations[i - 1] : undefined;
      if (section !== at || !opening) return [{ section, enterMs, clearMs, blocked }];
      return [
        {
          section,
          enterMs: opening.enterMs,
          clearMs,
          blocked: { startMs: opening.blocked.startMs, endMs: blocked.endMs },
        },
      ];
    }),
  );
}

function noReserve(problem: Problem): Problem {
  return { ...problem, policy: { ...problem.policy, reserve: 0 } };
}

type Kind = "districts" | "supplies" | "controllers" | "outputs" | "commandSystems";

function withItem<K extends Kind>(
  problem: Problem,
  kind: K,
  at: number,
  change: Partial<Problem[K][number]>,
) {
  return { ...problem, [kind]: problem[kind].map((item, i) => (i === at ? { ...item, ...change } : item)) };
}

function loadFindings(problem: Problem, kind: Exclude<Kind, "commandSystems">, at: number): Finding[] {
  return check(problem).findings.filter(
    ({ code, unit, ...found }) => unit === "mA" && !code.includes("-trips-on-") && found[kind].includes(at),
  );
}

/** Lit rakes, once for each train that has them. */
/** Whether a train with lit coaches has stock that another train has too. */
function handsLitRoadOn({ trains, rakes }: Problem): boolean {
  const itemsOf = ({ power, rakes: drawn }: Problem["trains"][number]) => [
    ...power.map(({ locomotive }) => `locomotive ${locomotive}`),
    ...drawn.map((rake) => `rake ${rake}`),
  ];
  return trains.some(
    (train, at) =>
      train.rakes.some((rake) => (rakes[rake]?.lightingMa ?? 0) > 0) &&
      trains.some(
        (other, beside) => beside !== at && itemsOf(other).some((item) => itemsOf(train).includes(item)),
      ),
  );
}

function trips(code: string, peakMa: number) {
  return { code, severity: "stops", measured: peakMa, limit: peakMa - 1 };
}
