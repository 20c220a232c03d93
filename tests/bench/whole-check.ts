import { check } from "../../src/planner/check.ts";
import { compilePlan } from "../../src/planner/compile-plan.ts";
import { sweepPlan } from "../../src/planner/sweep.ts";
import { makePlan } from "./made-plan.ts";
import { median, medianTimes } from "./measure.ts";
import { staticIntervalTree, toPeerInput } from "./peers.ts";
import { effort, SIZES, type Size } from "./sizes.ts";
import { ms, printTable, times } from "./table.ts";

/**
 * The whole check, against what the fastest of the trees takes for the clashes alone. `findings`: every pass and all findings
 * from the compiled plan; `+ compiling`: from the plain problem, motion of every train included; `+ report`: the
 * check as the service runs it, every occupation and every curve written out for people.
 */
export function benchWholeCheck(): void {
  console.log("ms; in brackets the share of what the fastest tree takes for the clashes alone");
  const rows = SIZES.map((size) => {
    const runs = Array.from({ length: size.seeds }, (_, seed) => runSeed(size, seed + 1));
    const of = (read: (run: Run) => number) => median(runs.map(read));
    const part = (read: (run: Run) => number) =>
      `${ms(of(read))} (${of((run) => read(run) / run.tree).toFixed(2)})`;
    return [
      size.trains,
      of((run) => run.findings),
      ms(of((run) => run.tree)),
      part((run) => run.passes),
      part((run) => run.compiled),
      part((run) => run.reported),
      `${((of((run) => run.compiled) * 1e3) / size.trains).toFixed(1)} us`,
      times(of((run) => run.reported / run.compiled)),
    ];
  });
  printTable(
    [
      "trains",
      "findings",
      "static-interval-tree",
      "findings alone",
      "+ compiling",
      "+ report",
      "compiled, a train",
      "report / compiled",
    ],
    rows,
  );
}

type Run = ReturnType<typeof runSeed>;

function runSeed(size: Size, seed: number) {
  const problem = makePlan(seed, size.trains, size.sections);
  const plan = compilePlan(problem);
  const input = toPeerInput(problem, plan.motions, plan.stock);
  const found = medianTimes(
    {
      tree: () => staticIntervalTree(input),
      passes: () => sweepPlan(plan),
      compiled: () => sweepPlan(compilePlan(problem)),
      reported: () => check(problem),
    },
    effort(size),
  );
  return { ...found, findings: sweepPlan(plan).findings.length };
}
