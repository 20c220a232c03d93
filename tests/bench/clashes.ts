import { compilePlan, type Plan } from "../../src/planner/compile-plan.ts";
import { occupy, sweepClashes } from "../../src/planner/occupation/occupations.ts";
import { makePlan } from "./made-plan.ts";
import { median, medianTimes } from "./measure.ts";
import {
  flattenIntervalTree,
  naiveWithinSection,
  nodeIntervalTree,
  type PeerInput,
  staticIntervalTree,
  toPeerInput,
} from "./peers.ts";
import { effort, SIZES, type Size } from "./sizes.ts";
import { ms, printTable, times } from "./table.ts";

/**
 * All clashes of a plan, against interval trees. The sweep starts from motions (it adds set-up and release itself), orders the
 * blocking times and lists the pairs; the trees start from blocking times in columns and count them.
 */
export function benchClashes(): void {
  console.log("ms to find every clashing pair once; in brackets how many times longer than the sweep");
  const rows = SIZES.map((size) => {
    const runs = Array.from({ length: size.seeds }, (_, seed) => runSeed(size, seed + 1));
    const of = (read: (run: Run) => number) => median(runs.map(read));
    const peer = (read: (run: Run) => number) =>
      `${ms(of(read))} (${times(of((run) => read(run) / run.sweep))})`;
    return [
      size.trains,
      of((run) => run.sections),
      of((run) => run.occupations),
      of((run) => run.pairs),
      ms(of((run) => run.sweep)),
      `${((of((run) => run.sweep) * 1e6) / of((run) => run.occupations)).toFixed(0)} ns`,
      peer((run) => run.node),
      peer((run) => run.flatten),
      peer((run) => run.static),
      peer((run) => run.naive),
    ];
  });
  printTable(
    [
      "trains",
      "sections",
      "occupations",
      "pairs",
      "sweep",
      "each",
      "node-interval-tree",
      "@flatten-js/interval-tree",
      "static-interval-tree",
      "naive in section",
    ],
    rows,
  );
}

type Run = ReturnType<typeof runSeed>;

function runSeed(size: Size, seed: number) {
  const plan = compilePlan(makePlan(seed, size.trains, size.sections));
  const input = toPeerInput(plan.problem, plan.motions, plan.stock);
  const pairs = countPairs(plan);
  requireSamePairs(input, pairs);
  const found = medianTimes(
    {
      sweep: () => countPairs(plan),
      node: () => nodeIntervalTree(input),
      flatten: () => flattenIntervalTree(input),
      static: () => staticIntervalTree(input),
      naive: () => naiveWithinSection(input),
    },
    effort(size),
  );
  return {
    ...found,
    pairs,
    sections: plan.problem.sections.length,
    occupations: plan.motions.section.length,
  };
}

export function countPairs({ problem, motions, stock, track }: Plan): number {
  return sweepClashes(motions, occupy(problem, motions, stock), track.exclusive, stock).first.length;
}

export function requireSamePairs(input: PeerInput, pairs: number): void {
  for (const peer of [nodeIntervalTree, flattenIntervalTree, staticIntervalTree, naiveWithinSection]) {
    const found = peer(input);
    if (found !== pairs) throw new Error(`the sweep finds ${pairs} pairs, ${peer.name} ${found}`);
  }
}
