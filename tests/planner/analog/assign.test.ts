import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createAllowance } from "../../../src/planner/analog/allowance.ts";
import { assignOutputs } from "../../../src/planner/analog/assign.ts";
import { overfullInstant } from "../../../src/planner/analog/clique.ts";
import { conflictGroups } from "../../../src/planner/analog/conflict-groups.ts";
import { irreducibleCore } from "../../../src/planner/analog/core.ts";
import { compete, type Demand } from "../../../src/planner/analog/demand.ts";
import { extraOutputs } from "../../../src/planner/analog/extra-outputs.ts";
import { canAssign } from "../../oracle/exhaustive-assignment.ts";
import { PATIENCE_MS, PLAN_SEED } from "../../oracle/plans.ts";
import { randomDemands, range } from "./random-demands.ts";

const ENOUGH = 100_000;
const LISTS = { seed: PLAN_SEED, numRuns: 3_000 };
console.log(`demand lists: seed ${PLAN_SEED}`);

describe("giving outputs to demands", { timeout: PATIENCE_MS }, () => {
  test("it finds an assignment exactly where trying every way finds one", () => {
    fc.assert(
      fc.property(randomDemands(9, 4, 4), (demands) => {
        const answer = assignOutputs(demands, createAllowance(ENOUGH));
        expect(answer.status).toBe(canAssign(demands) ? "assigned" : "impossible");
        if (answer.status === "assigned") expectFits(demands, answer.outputs);
      }),
      LISTS,
    );
  });

  test("where it fails, the demands up to the one it was stuck at already cannot be served", () => {
    fc.assert(
      fc.property(randomDemands(9, 3, 4), (demands) => {
        const answer = assignOutputs(demands, createAllowance(ENOUGH));
        if (answer.status !== "impossible") return;
        const order = [...demands].sort(
          (a, b) => a.startMs - b.startMs || a.endMs - b.endMs || a.train - b.train,
        );
        expect(canAssign(order.slice(0, answer.reached))).toBe(false);
      }),
      LISTS,
    );
  });

  test("groups that share no output at one time can be served one by one", () => {
    fc.assert(
      fc.property(randomDemands(9, 4, 4), (demands) => {
        const groups = conflictGroups(demands);
        expect(groups.flat().sort((a, b) => a - b)).toEqual(range(demands.length));
        const apart = groups.every((group) => canAssign(group.map((at) => demands[at] as Demand)));
        expect(apart).toBe(canAssign(demands));
      }),
      LISTS,
    );
  });

  test("the proof cannot be served, and can without any one of its demands", () => {
    let proofs = 0;
    let atOneInstant = 0;
    fc.assert(
      fc.property(randomDemands(10, 3, 4), (demands) => {
        const answer = assignOutputs(demands, createAllowance(ENOUGH));
        if (answer.status !== "impossible") return;
        const { core, irreducible } = irreducibleCore(demands, answer.reached, createAllowance(ENOUGH));
        const runs = core.map((at) => demands[at] as Demand);
        expect(irreducible).toBe(true);
        expect(canAssign(runs)).toBe(false);
        for (const left of runs) expect(canAssign(runs.filter((run) => run !== left))).toBe(true);
        proofs++;
        if (overfullInstant(demands, createAllowance(ENOUGH))) atOneInstant++;
      }),
      LISTS,
    );
    expect(atOneInstant).toBeGreaterThan(100);
    // some have too few outputs at no single instant, and still cannot be served
    expect(proofs - atOneInstant).toBeGreaterThan(5);
  });

  test("the extra outputs asked for serve the rest, and one fewer would not", () => {
    fc.assert(
      fc.property(randomDemands(8, 3, 4), (demands) => {
        const answer = assignOutputs(demands, createAllowance(ENOUGH));
        if (answer.status !== "impossible") return;
        const { core } = irreducibleCore(demands, answer.reached, createAllowance(ENOUGH));
        const extras = extraOutputs(demands, core, createAllowance(ENOUGH));
        if (!extras) throw new Error("the search is large enough");
        const withExtras = (count: number) =>
          demands.map((demand) => ({
            ...demand,
            candidates: demand.sections.every((section) => extras.sections.includes(section))
              ? [...demand.candidates, ...range(count).map((at) => 100 + at)]
              : demand.candidates,
          }));
        expect(canAssign(withExtras(extras.needed))).toBe(true);
        expect(canAssign(withExtras(extras.needed - 1))).toBe(false);
        const served = demands.flatMap((demand, at) =>
          extras.outputs[at] === -1 ? [] : [{ demand, output: extras.outputs[at] as number }],
        );
        expectFits(
          served.map(({ demand }) => demand),
          served.map(({ output }) => output),
        );
      }),
      LISTS,
    );
  });

  test("a search that may not visit enough states says that it did not decide", () => {
    const demands = range(6).map((train) => ({
      train,
      startMs: train,
      endMs: train + 3,
      candidates: [0, 1, 2],
    }));
    expect(assignOutputs(demands, createAllowance(3)).status).toBe("not-decided");
    expect(assignOutputs(demands, createAllowance(ENOUGH)).status).toBe("assigned");
  });

  test("outputs that reach the same are one to the search, however many there are", () => {
    const demands = range(60).map((train) => ({
      train,
      startMs: train,
      endMs: train + 13,
      candidates: range(12),
    }));
    const tooMany = assignOutputs(demands, createAllowance(2_000));
    expect(tooMany.status).toBe("impossible");
    const enough = demands.map((demand) => ({ ...demand, candidates: range(13) }));
    expect(assignOutputs(enough, createAllowance(2_000)).status).toBe("assigned");
  });

  test("the same demands in another order get the same outputs", () => {
    fc.assert(
      fc.property(randomDemands(9, 4, 4), fc.nat(), (demands, turn) => {
        const key = (demand: Demand) => JSON.stringify(demand);
        const when = ({ train, startMs, endMs }: Demand) => `${train} ${startMs} ${endMs}`;
        const distinct = demands.filter((a, at) => demands.findIndex((b) => when(a) === when(b)) === at);
        const by = distinct.length === 0 ? 0 : turn % distinct.length;
        const turned = [...distinct.slice(by), ...distinct.slice(0, by)];
        const outputs = (list: readonly Demand[]) => {
          const answer = assignOutputs(list, createAllowance(ENOUGH));
          return answer.status === "assigned"
            ? list.map((demand, at) => `${key(demand)} ${answer.outputs[at]}`).sort()
            : answer;
        };
        expect(outputs(turned)).toEqual(outputs(distinct));
      }),
      LISTS,
    );
  });
});

function expectFits(demands: readonly Demand[], outputs: readonly number[]): void {
  for (const [at, demand] of demands.entries()) {
    expect(demand.candidates).toContain(outputs[at]);
    for (const [other, rival] of demands.entries())
      if (compete(demand, rival)) expect(outputs[at]).not.toBe(outputs[other]);
  }
}
