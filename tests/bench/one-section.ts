import { compilePlan } from "../../src/planner/compile-plan.ts";
import type { Problem, Train } from "../../src/planner/problem.ts";
import { PLAIN } from "../planner/plain-records.ts";
import { countPairs } from "./clashes.ts";
import { makePlan } from "./made-plan.ts";
import { medianTimes } from "./measure.ts";
import {
  flattenIntervalTree,
  naiveWithinSection,
  nodeIntervalTree,
  staticIntervalTree,
  toPeerInput,
} from "./peers.ts";
import { createRandom } from "./random.ts";
import { ms, printTable, times } from "./table.ts";

const OCCUPATIONS = 20_000;
const SESSION_MS = 800_000_000;

/** Everything on one section: where sorting trains out by section helps nobody. */
export function benchOneSection(): void {
  const plan = compilePlan(crowdOneSection(1));
  const input = toPeerInput(plan.problem, plan.motions, plan.stock);
  const pairs = countPairs(plan);
  for (const peer of [staticIntervalTree, naiveWithinSection])
    if (peer(input) !== pairs) throw new Error(`${peer.name} finds other pairs than the sweep`);
  const found = medianTimes(
    {
      sweep: () => countPairs(plan),
      "naive in section": () => naiveWithinSection(input),
      "node-interval-tree": () => nodeIntervalTree(input),
      "@flatten-js/interval-tree": () => flattenIntervalTree(input),
      "static-interval-tree": () => staticIntervalTree(input),
    },
    { laps: 5, lapMs: 20, warmMs: 100 },
  );
  console.log(`${OCCUPATIONS} occupations of one section, ${pairs} pairs clash`);
  printTable(
    ["", "ms", "to the sweep"],
    Object.entries(found).map(([name, time]) => [name, ms(time), times(time / found.sweep)]),
  );
}

/** Trains that are put on a road, stay for a minute or so and are taken off, at any time of a very long session. */
function crowdOneSection(seed: number): Problem {
  const random = createRandom(seed);
  const problem = makePlan(seed, 1, 1);
  const trains = Array.from({ length: OCCUPATIONS }, (_, i): Train => {
    const departMs = random.whole(60_000, SESSION_MS);
    const arriveMs = departMs + random.whole(10_000, 30_000);
    return {
      ...PLAIN.train,
      code: `N${i}`,
      lengthMm: 1_000,
      power: [],
      rakes: [],
      path: [{ section: 0, arriveMs, departMs }],
      placedMs: departMs - 5_000,
      removedMs: arriveMs + 5_000,
    };
  });
  return { ...problem, slot: { startMs: 0, endMs: SESSION_MS + 60_000 }, trains };
}
