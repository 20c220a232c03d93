import fc from "fast-check";
import { expect, test } from "vitest";
import { createAllowance } from "../../../src/planner/analog/allowance.ts";
import { assignOutputs } from "../../../src/planner/analog/assign.ts";
import { compete, type Demand } from "../../../src/planner/analog/demand.ts";
import { fewestTurns } from "../../../src/planner/selectors/fewest-turns.ts";
import type { FollowPair } from "../../../src/planner/selectors/follow-pairs.ts";
import { PATIENCE_MS, PLAN_SEED } from "../../oracle/plans.ts";
import { randomDemands } from "../analog/random-demands.ts";

const LISTS = { seed: PLAN_SEED, numRuns: 1_500 };
console.log(`fewest turns: seed ${PLAN_SEED}`);

test("the changes between runs are the fewest of all assignments, and with little room for the search a bound of them", {
  timeout: PATIENCE_MS,
}, () => {
  let spared = 0;
  let loose = 0;
  fc.assert(
    fc.property(randomDemands(8, 4, 4), fc.array(fc.nat(1_000), { maxLength: 24 }), (demands, numbers) => {
      const pairs = pairsOf(demands.length, numbers);
      const given = assignOutputs(demands, createAllowance(100_000));
      if (given.status !== "assigned") return;
      const fewest = Math.min(...ways(demands).map((outputs) => changesOf(pairs, outputs)));
      const answer = fewestTurns(demands, pairs, given.outputs);
      expect(answer).toMatchObject({ changes: fewest, atLeast: fewest });
      expect(changesOf(pairs, answer.outputs)).toBe(fewest);
      expect(fits(demands, answer.outputs)).toBe(true);
      if (changesOf(pairs, given.outputs) > fewest) spared++;

      const hasty = fewestTurns(demands, pairs, given.outputs, 1);
      expect(hasty.atLeast).toBeLessThanOrEqual(fewest);
      expect(hasty.changes).toBeGreaterThanOrEqual(fewest);
      expect(hasty.changes).toBe(changesOf(pairs, hasty.outputs));
      expect(fits(demands, hasty.outputs)).toBe(true);
      if (hasty.atLeast < hasty.changes) loose++;
    }),
    LISTS,
  );
  expect(spared).toBeGreaterThan(100);
  expect(loose).toBeGreaterThan(5);
});

test("runs that can never have the same output need no search, and none at all need no turn", () => {
  expect(fewestTurns([], [], [])).toEqual({ outputs: [], changes: 0, atLeast: 0 });
  const demands = [
    { startMs: 0, endMs: 10, train: 1, candidates: [0, 1] },
    { startMs: 5, endMs: 15, train: 2, candidates: [0, 1] },
  ];
  const answer = fewestTurns(demands, [{ earlier: 0, later: 1, sections: 3 }], [0, 1]);
  expect(answer).toEqual({ outputs: [0, 1], changes: 3, atLeast: 3 });
});

/** Pairs at random, each once, of two different demands. */
function pairsOf(count: number, numbers: readonly number[]): FollowPair[] {
  const pairs = new Map<string, FollowPair>();
  for (const n of numbers) {
    const earlier = n % count;
    const later = Math.floor(n / count) % count;
    if (earlier !== later && count > 1)
      pairs.set(`${earlier} ${later}`, { earlier, later, sections: 1 + (n % 3) });
  }
  return [...pairs.values()];
}

function changesOf(pairs: readonly FollowPair[], outputs: readonly number[]): number {
  return pairs.reduce(
    (sum, { earlier, later, sections }) => sum + (outputs[earlier] === outputs[later] ? 0 : sections),
    0,
  );
}

function ways(demands: readonly Demand[]): number[][] {
  let all: number[][] = [[]];
  for (const { candidates } of demands)
    all = all.flatMap((way) =>
      candidates.map((output) => [...way, output]).filter((next) => fits(demands, next)),
    );
  return all;
}

function fits(demands: readonly Demand[], outputs: readonly number[]): boolean {
  return outputs.every(
    (output, at) =>
      demands[at]?.candidates.includes(output) &&
      outputs.every(
        (other, before) =>
          before >= at || other !== output || !compete(demands[at] as Demand, demands[before] as Demand),
      ),
  );
}
