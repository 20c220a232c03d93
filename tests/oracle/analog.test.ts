import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Interval, Problem, Train } from "../../src/planner/problem.ts";
import type { AnalogRun, LoadReport } from "../../src/planner/result.ts";
import { judgeAssignment } from "../../src/planner/verify/judge-assignment.ts";
import { judgeCore } from "../../src/planner/verify/judge-core.ts";
import { type PlainRun, plainRuns } from "./analog-runs.ts";
import { canAssign } from "./exhaustive-assignment.ts";
import { coveredMs, expectLoad, needMs } from "./load-samples.ts";
import { clashes } from "./occupation.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";
import { valueAt } from "./step-value.ts";
import { itemsOf, sameStock } from "./stock.ts";

const byStart = (a: PlainRun, b: PlainRun) => a.startMs - b.startMs || a.endMs - b.endMs || a.train - b.train;

test("a train needs an output for the runs that its path, read anew, asks for", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("analog runs", (problem) => {
    const told = check(problem).analog.runs.map(({ train, span, candidates, runningMa, sections }) => ({
      train,
      ...span,
      candidates,
      runningMa,
      sections: [...new Set(sections)].sort(),
    }));
    const expected = plainRuns(problem)
      .sort(byStart)
      .map(({ train, startMs, endMs, candidates, enginesMa, lightingMa, stays }) => ({
        train,
        startMs,
        endMs,
        candidates,
        runningMa: enginesMa + lightingMa,
        sections: [...new Set(stays.map(({ section }) => section))].sort(),
      }));
    expect(told).toEqual(expected);
  });
});

test("a section is fed while the train of the run is about to be, is or just was in it", {
  timeout: PATIENCE_MS,
}, () => {
  let compared = 0;
  forRandomPlans("feeds", (problem) => {
    // stock that goes on in another train hands sections over: that is judged below, not compared
    const items = problem.trains.flatMap(itemsOf);
    if (new Set(items).size < items.length) return;
    const { runs } = check(problem).analog;
    for (const [at, run] of plainRuns(problem).sort(byStart).entries()) {
      const { sections, sectionSpans } = runs[at] as AnalogRun;
      // so may a train that comes back into a section
      const path = problem.trains[run.train]?.path ?? [];
      const once = (section: number) => path.filter((entry) => entry.section === section).length === 1;
      const instants = Array.from({ length: run.endMs - run.startMs + 4 }, (_, i) => run.startMs - 2 + i);
      const told = instants.map((ms) =>
        sections.filter((section, i) => once(section) && isIn(sectionSpans[i] as Interval, ms)).sort(),
      );
      const expected = instants.map((ms) =>
        run.stays
          .filter((stay) => once(stay.section) && isIn(stay, ms))
          .map(({ section }) => section)
          .sort(),
      );
      expect(told).toEqual(expected);
      compared++;
    }
  });
  expect(compared).toBeGreaterThan(50);
});

test("outputs are assigned exactly where trying every way finds one, and within their ratings where that can be", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("assignment", (problem) => {
    const { runs, status } = check(problem).analog;
    const choices = runs.map((run) => ({ ...run, ...run.span }));
    expect(status).toBe(canAssign(choices) ? "assigned" : "impossible");
    const rated = choices.map((run) => ({ ...run, candidates: within(run) }));
    if (canAssign(rated)) for (const run of runs) expect(within(run)).toContain(run.output);

    function within(run: AnalogRun): number[] {
      return run.candidates.filter((output) => (problem.outputs[output]?.ratingMa ?? 0) >= run.runningMa);
    }
  });
});

test("an assignment stands before the judge wherever the plan does not want one track or one engine for two", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("judge", (problem) => {
    const { analog } = check(problem);
    const faults = judgeAssignment(problem, analog);
    const clashing = clashes(problem);
    const unexplained = faults.filter((fault) => {
      if (fault.kind !== "two-outputs-in-section") return true;
      const [a, b] = fault.runs.map((at) => analog.runs[at]?.train ?? -1) as [number, number];
      const twice =
        sameStock(problem, a, b) && workTogether(problem.trains[a] as Train, problem.trains[b] as Train);
      return !twice && !clashing.some(({ sections }) => sections.includes(fault.section));
    });
    expect(unexplained).toEqual([]);
  });
});

test("what cannot be served is proven by runs none of which can be spared, and the outputs asked for would serve", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("proof", (problem) => {
    const { analog, findings } = check(problem);
    if (analog.status !== "impossible") {
      expect(analog.core).toEqual([]);
      return;
    }
    expect(judgeCore(problem, analog, 100_000)).toBe("proven");
    const reachable = analog.runs.filter(({ candidates }) => candidates.length > 0);
    const tooFew = findings.filter(({ code }) => code === "outputs-too-few");
    const served = (less: number) =>
      canAssign(
        reachable.map((run) => ({
          ...run,
          ...run.span,
          candidates: [
            ...run.candidates,
            ...tooFew.flatMap(({ needed, sections }, at) =>
              run.sections.every((section) => sections.includes(section))
                ? extras(at, (needed ?? 0) - less)
                : [],
            ),
          ],
        })),
      );
    expect(served(0)).toBe(true);
    if (tooFew.length === 1) expect(served(1)).toBe(false);
    const none = findings.filter(({ code }) => code === "output-none-reaches").length;
    expect(none).toBe(analog.runs.length - reachable.length);
  });
});

test("outputs and transformers carry in every millisecond what their trains draw", {
  timeout: PATIENCE_MS,
}, () => {
  forRandomPlans("analog load", (problem) => {
    const { analog, outputs, controllers } = check(problem);
    const plain = plainRuns(problem).sort(byStart);
    const draws = (ms: number, fits: (output: number) => boolean) =>
      plain.flatMap((run, at) => {
        const told = analog.runs[at] as AnalogRun;
        return told.output >= 0 && fits(told.output) ? [{ train: run.train, ma: drawAt(run, told, ms) }] : [];
      });
    const instants = coveredMs(problem);
    problem.outputs.forEach(({ ratingMa: limitMa }, at) => {
      const mine = instants.map((ms) => draws(ms, (output) => output === at));
      expectLoad(problem, outputs[at] as LoadReport, { limitMa, constantMa: 0, draws: mine });
    });
    problem.controllers.forEach(({ transformerMa: limitMa, accessoryMa: constantMa }, at) => {
      const mine = instants.map((ms) => draws(ms, (output) => problem.outputs[output]?.controller === at));
      expectLoad(problem, controllers[at] as LoadReport, { limitMa, constantMa, draws: mine });
    });
  });
});

test("one stalled locomotive asks of its output at worst what every millisecond says, and is told of where that is too much", {
  timeout: PATIENCE_MS,
}, () => {
  let told = 0;
  forRandomPlans("analog stalls", (problem) => {
    const { analog, outputs, findings } = check(problem, { mostFindings: 1_000_000 });
    const plain = plainRuns(problem).sort(byStart);
    const instants = coveredMs(problem);
    problem.outputs.forEach(({ ratingMa }, output) => {
      const mine = plain.filter((_, at) => (analog.runs[at] as AnalogRun).output === output);
      // a path without a changeover is a fault: its train would be on one output as two
      if (mine.some((run, at) => mine.slice(at + 1).some(({ startMs }) => startMs < run.endMs))) return;
      // design section 5: the load + the largest (stall − what it draws then) among the locomotives on it then; on analog
      // track those that stand draw nothing, and a wheel that does not turn cannot be held
      const draws = instants.map((ms) =>
        plain
          .map((run, at) => ({ run, told: analog.runs[at] as AnalogRun }))
          .filter((each) => each.told.output === output)
          .map(({ run, told }) => ({
            ma: drawAt(run, told, ms),
            moreMa: isMoving(run, ms) ? mostMoreMa(problem, run.train) : Number.NEGATIVE_INFINITY,
          })),
      );
      const plainMa = draws.map((here) => here.reduce((sum, { ma }) => sum + ma, 0));
      const stalled = draws.map(
        (here, at) => (plainMa[at] as number) + Math.max(...here.map(({ moreMa }) => moreMa)),
      );
      const worst = Math.max(...stalled);
      const report = outputs[output] as LoadReport;
      if (worst === Number.NEGATIVE_INFINITY) expect(report.stall).toBeNull();
      else expect(report.stall).toMatchObject({ ma: worst, atMs: instants[stalled.indexOf(worst)] });
      const found = findings.filter(
        (finding) => finding.code === "output-trips-on-stall" && finding.outputs.includes(output),
      );
      const isOver = Math.max(...plainMa) > ratingMa;
      expect(found.map(({ severity, measured, limit }) => [severity, measured, limit])).toEqual(
        worst > ratingMa && !isOver ? [["warns", worst, ratingMa]] : [],
      );
      told += found.length;
    });
  });
  expect(told).toBeGreaterThan(5);
});

test("outputs are needed in every millisecond by the trains then in a run", { timeout: PATIENCE_MS }, () => {
  forRandomPlans("output need", (problem) => {
    const { need } = check(problem).analog;
    const runs = plainRuns(problem);
    const instants = needMs(problem);
    const trains = instants.map((ms) => [
      ...new Set(runs.filter((run) => isIn(run, ms)).map(({ train }) => train)),
    ]);
    const counts = trains.map((present) => present.length);
    const peak = Math.max(...counts);
    const first = counts.indexOf(peak);
    expect(need).toMatchObject({
      stock: problem.outputs.length,
      peak,
      peakAtMs: peak > 0 ? instants[first] : problem.slot.startMs,
      trains: peak > 0 ? trains[first]?.sort((a, b) => a - b) : [],
      overMs: counts.filter((count) => count > problem.outputs.length).length,
    });
    expect(instants.map((ms) => valueAt(need.curve, ms))).toEqual(counts);
  });
});

/** Stock in two trains: both cannot be where they say. */
function workTogether(a: Train, b: Train): boolean {
  const [departsA, departsB] = [a, b].map(({ path }) => path[0]?.departMs ?? 0) as [number, number];
  const [arrivesA, arrivesB] = [a, b].map(({ path }) => path.at(-1)?.arriveMs ?? 0) as [number, number];
  return departsA < arrivesB && departsB < arrivesA;
}

function extras(group: number, count: number): string[] {
  return Array.from({ length: count }, (_, at) => `extra ${group}.${at}`);
}

function isIn({ startMs, endMs }: { startMs: number; endMs: number }, ms: number): boolean {
  return startMs <= ms && ms < endMs;
}

/**
 * Design section 5: the load of an output is over the sections switched to it then, so a rake is lit while the sections
 * that its train is in are. When they are switched is as reported: the judge of assignments looks at that.
 */
function drawAt(run: PlainRun, told: AnalogRun, ms: number): number {
  const under = run.stays.filter((stay) => stay.isIn(ms));
  const isSwitched = (wanted: number) =>
    told.sections.some((section, i) => section === wanted && isIn(told.sectionSpans[i] as Interval, ms));
  const isLit = under.length > 0 && under.every(({ section }) => isSwitched(section));
  return (isLit ? run.lightingMa : 0) + (isMoving(run, ms) ? run.enginesMa : 0);
}

function isMoving(run: PlainRun, ms: number): boolean {
  const stands = run.stops.some((stop) => isIn({ startMs: stop.arriveMs, endMs: stop.departMs }, ms));
  return ms >= run.departMs && ms < run.arriveMs && !stands;
}

/** How much more than it draws one of a train's locomotives takes with its wheels held, at most; −∞ where it has none. */
function mostMoreMa({ trains, locomotives }: Problem, train: number): number {
  const engines = trains[train]?.power.map(({ locomotive }) => locomotives[locomotive]) ?? [];
  return Math.max(
    Number.NEGATIVE_INFINITY,
    ...engines.map((engine) => (engine?.stallMa ?? 0) - (engine?.runningMa ?? 0)),
  );
}
