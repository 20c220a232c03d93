import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createAllowance } from "../../../src/planner/analog/allowance.ts";
import { assignOutputs } from "../../../src/planner/analog/assign.ts";
import { searchOrder } from "../../../src/planner/analog/demand.ts";
import { type Charges, createChargeBook } from "../../../src/planner/handsets/charge-book.ts";
import { giveInTurn } from "../../../src/planner/handsets/give-in-turn.ts";
import type { HandsetDemand } from "../../../src/planner/handsets/handset-demands.ts";
import { shareHandsets } from "../../../src/planner/handsets/share-handsets.ts";
import { canShare, isGood } from "../../oracle/exhaustive-sharing.ts";
import { PATIENCE_MS, PLAN_SEED } from "../../oracle/plans.ts";

const ENOUGH = 100_000;
const demand = (
  train: number,
  startMs: number,
  endMs: number,
  candidates: number[],
  isClaimed = false,
): HandsetDemand => ({ train, startMs, endMs, candidates, isClaimed });
const share = (demands: HandsetDemand[], charges: Charges) =>
  shareHandsets(demands, charges, createAllowance(ENOUGH));

describe("sharing out handsets by hand", () => {
  // design section 7: the battery counts from the evening's first pick-up of that handset to its last hand-in
  test("two short charges serve what neither could alone", () => {
    const evening = [demand(0, 0, 10, [0, 1]), demand(1, 20, 30, [0, 1]), demand(2, 40, 50, [0, 1])];
    // 0 to 30 and 40 to 50, or 0 to 10 and 20 to 50: a charge of 30 does, one of 29 does not
    expect(share(evening, [30, 30]).status).toBe("assigned");
    expect(share(evening, [29, 29]).status).toBe("impossible");
    expect(share(evening, [50, 1])).toEqual({ status: "assigned", outputs: [0, 0, 0] });
  });

  test("what somebody has stays with them, and the rest goes round it", () => {
    const others = [demand(0, 0, 10, [0, 1]), demand(2, 20, 30, [0, 1])];
    const claim = demand(1, 5, 25, [0], true);
    expect(share([...others, claim], [null, null])).toEqual({ status: "assigned", outputs: [1, 1, 0] });
    // the claim alone is longer than its charge lasts, which is told of apart; nothing else may be put on it
    expect(share([...others, claim], [15, null])).toEqual({ status: "assigned", outputs: [1, 1, 0] });
    expect(share([demand(0, 30, 40, [0]), claim], [30, null]).status).toBe("impossible");
  });
});

const HANDSETS = 3;
const wishes = fc
  .array(
    fc.record({
      startMs: fc.nat(30),
      lengthMs: fc.integer({ min: 1, max: 8 }),
      candidates: fc.subarray([0, 1, 2], { minLength: 1 }),
      claims: fc.nat(5),
    }),
    { maxLength: 7 },
  )
  .map((list) =>
    list.map(({ startMs, lengthMs, candidates, claims }, train) => {
      const isClaimed = claims === 0;
      return demand(
        train,
        startMs,
        startMs + lengthMs,
        isClaimed ? candidates.slice(0, 1) : candidates,
        isClaimed,
      );
    }),
  );
const charges = fc.array(fc.option(fc.integer({ min: 4, max: 30 })), {
  minLength: HANDSETS,
  maxLength: HANDSETS,
});

test("a sharing is found exactly where trying every way finds one, and it is good", {
  timeout: PATIENCE_MS,
}, () => {
  console.log(`handset demands: seed ${PLAN_SEED}`);
  let byChargeAlone = 0;
  let choseAnew = 0;
  fc.assert(
    fc.property(wishes, charges, (demands, lasting) => {
      const answer = share(demands, lasting);
      expect(answer.status).toBe(canShare(demands, lasting) ? "assigned" : "impossible");
      const plain = assignOutputs(demands, createAllowance(ENOUGH));
      if (plain.status !== "assigned") return;
      if (answer.status !== "assigned") byChargeAlone++;
      else {
        expect(isGood(demands, answer.outputs, lasting)).toBe(true);
        const inTurn = giveInTurn(demands, searchOrder(demands), createChargeBook(demands, lasting));
        if (inTurn === null && !isGood(demands, plain.outputs, lasting)) choseAnew++;
      }
    }),
    { seed: PLAN_SEED, numRuns: 4_000 },
  );
  // both ways out of the last search were taken
  expect(byChargeAlone).toBeGreaterThan(50);
  expect(choseAnew).toBeGreaterThan(0);
});

test("more states than it may visit leave it undecided, never guessed", () => {
  const evening = [0, 20, 40, 60, 80].map((from, train) => demand(train, from, from + 10, [0, 1, 2]));
  const lasting = [25, 26, 27];
  expect(share(evening, lasting).status).toBe("impossible");
  // as many as the first search needs, which does not ask for charges
  const few = createAllowance(evening.length + 1);
  expect(assignOutputs(evening, few).status).toBe("assigned");
  expect(shareHandsets(evening, lasting, few).status).toBe("not-decided");
});
