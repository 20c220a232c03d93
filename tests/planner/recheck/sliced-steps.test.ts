import fc from "fast-check";
import { expect, test } from "vitest";
import {
  changeStep,
  createSlicedSteps,
  peakOf,
  settleSlice,
} from "../../../src/planner/recheck/sliced-steps.ts";

const END_MS = 1_000;
const FUNCTIONS = 3;

interface Change {
  readonly of: number;
  readonly ms: number;
  readonly by: number;
}

const changes = fc.array(
  fc.record({
    of: fc.nat(FUNCTIONS - 1),
    ms: fc.integer({ min: -200, max: 1_200 }),
    by: fc.integer({ min: -50, max: 50 }),
  }),
  { maxLength: 120 },
);

/** Greatest sum of all changes up to an instant, 0 before the first. */
function peakByHand(made: readonly Change[], of: number): number {
  const own = made.filter((change) => change.of === of);
  const sums = own.map(({ ms }) =>
    own.filter((other) => other.ms <= ms).reduce((sum, { by }) => sum + by, 0),
  );
  return Math.max(0, ...sums);
}

test("peaks are right after every change, taken back changes included", () => {
  fc.assert(
    fc.property(changes, (planned) => {
      const sliced = createSlicedSteps(Int32Array.of(0, 40, 400), 0, END_MS);
      const made: Change[] = [];
      for (const [i, change] of planned.entries()) {
        const earlier = made[i % 5];
        const now = i % 3 === 2 && earlier ? { ...earlier, by: -earlier.by } : change;
        changeStep(sliced, now.of, now.ms, now.by);
        made.push(now);
        for (let at = 0; at < sliced.dirty.length; at += 2)
          settleSlice(sliced, sliced.dirty[at] as number, sliced.dirty[at + 1] as number);
        sliced.dirty.length = 0;
        for (let of = 0; of < FUNCTIONS; of++) expect(peakOf(sliced, of)).toBe(peakByHand(made, of));
      }
    }),
    { numRuns: 60 },
  );
});
