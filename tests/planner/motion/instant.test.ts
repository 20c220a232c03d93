import fc from "fast-check";
import { expect, test } from "vitest";
import { msToRun } from "../../../src/planner/motion/instant.ts";

/** floor(mm × duration / length + 1/2) with whole numbers of any size. */
function exactly(mm: number, lengthMm: number, durationMs: number): number {
  return Number((2n * BigInt(mm) * BigInt(durationMs) + BigInt(lengthMm)) / (2n * BigInt(lengthMm)));
}

test("an instant is the true one rounded once, for every length and duration that a path may have", () => {
  const runs = fc
    .integer({ min: 1, max: 2 ** 31 - 1 })
    .chain((lengthMm) =>
      fc.tuple(
        fc.integer({ min: 0, max: lengthMm }),
        fc.constant(lengthMm),
        fc.integer({ min: 0, max: 2 ** 31 - 1 }),
      ),
    );
  fc.assert(
    fc.property(runs, ([mm, lengthMm, ms]) => {
      expect(msToRun(mm, lengthMm, ms)).toBe(exactly(mm, lengthMm, ms));
    }),
    { numRuns: 5_000 },
  );
});

test("halves are rounded up, and what is a hair below a half is not", () => {
  expect(msToRun(1, 2, 1)).toBe(1);
  expect(msToRun(3, 4, 6)).toBe(5); // 4.5
  expect(msToRun(1_073_741_823, 2_147_483_647, 1)).toBe(0); // 0.49999999977
  expect(msToRun(1_073_741_824, 2_147_483_647, 1)).toBe(1);
});
