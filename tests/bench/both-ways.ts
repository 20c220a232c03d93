import { compilePlan } from "../../src/planner/compile-plan.ts";
import { costAllDigital } from "../../src/planner/costing/all-digital.ts";
import { createLoadScene, digitalLoad } from "../../src/planner/load/digital-load.ts";
import { sweepLoads } from "../../src/planner/load/load-sweep.ts";
import type { Problem } from "../../src/planner/problem.ts";
import { coverage } from "../../src/planner/sweep.ts";
import { makePlan } from "./made-plan.ts";
import { median, medianTimes } from "./measure.ts";
import { effort, SIZES } from "./sizes.ts";
import { ms, printTable, times } from "./table.ts";

/** What a club buys: district and booster, and so small that there are many. */
const USUAL = { breakerMa: 3_000, ratingMa: 5_000 };
const SMALL = { breakerMa: 1_000, ratingMa: 2_000 };

/** As large as a layout and a timetable may be. */
const LARGEST = { trains: 2_000, sections: 2_000, seeds: 1 } as const;

/**
 * A timetable costed all-digital, beside one sweep of all loads: made by trying, each section that is looked at would take one
 * such sweep.
 */
export function benchBothWays(): void {
  const rows = [...SIZES.filter(({ trains }) => trains < LARGEST.trains), LARGEST].map((size) => {
    const runs = Array.from({ length: size.seeds }, (_, seed) => runSeed(size, seed + 1));
    const of = (read: (run: Run) => number) => median(runs.map(read));
    return [
      size.trains,
      of((run) => run.sections),
      of((run) => run.districts),
      ms(of((run) => run.sweep)),
      ms(of((run) => run.usual)),
      times(of((run) => run.usual / run.sweep)),
      ms(of((run) => run.small)),
      times(of((run) => run.small / run.sweep)),
    ];
  });
  printTable(
    [
      "trains",
      "sections",
      "districts",
      "one sweep, ms",
      "costing, ms",
      "to a sweep",
      "small breakers, ms",
      "to a sweep",
    ],
    rows,
  );
}

type Run = ReturnType<typeof runSeed>;

function runSeed(size: { readonly trains: number; readonly sections: number }, seed: number) {
  const problem = makePlan(seed, size.trains, size.sections);
  const found = medianTimes(
    {
      sweep: () => sweepAll(problem),
      usual: () => costAllDigital(problem, USUAL),
      small: () => costAllDigital(problem, SMALL),
    },
    effort(size),
  );
  const { districts } = costAllDigital(problem, SMALL);
  return { ...found, sections: problem.sections.length, districts: districts.length };
}

function sweepAll(problem: Problem) {
  const plan = compilePlan(problem);
  const events = digitalLoad(createLoadScene(plan));
  return sweepLoads(problem, events, coverage(problem, plan.motions, plan.stock));
}
