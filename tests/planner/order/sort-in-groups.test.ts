import fc from "fast-check";
import { expect, test } from "vitest";
import { sortInGroups } from "../../../src/planner/order/sort-in-groups.ts";

function expectSorted(groups: number, rows: readonly { group: number; time: number }[]): void {
  const group = Int32Array.from(rows, (row) => row.group);
  const time = Int32Array.from(rows, (row) => row.time);
  const wanted = rows
    .map((row, index) => ({ ...row, index }))
    .sort((a, b) => a.group - b.group || a.time - b.time || a.index - b.index);
  const sorted = sortInGroups(rows.length, group, groups, time);
  expect([...sorted.row]).toEqual(wanted.map(({ index }) => index));
  expect([...sorted.time]).toEqual(wanted.map((row) => row.time));
  for (let g = 0; g <= groups; g++)
    expect(sorted.start[g]).toBe(wanted.filter((row) => row.group < g).length);
}

const rowsOf = (groups: number, time: fc.Arbitrary<number>, most: number) =>
  fc.array(fc.record({ group: fc.nat(groups - 1), time }), { maxLength: most });

test("rows come by group, then time, then as they were, whatever the times", () => {
  fc.assert(
    fc.property(rowsOf(5, fc.integer({ min: -2147483648, max: 2147483647 }), 60), (rows) =>
      expectSorted(5, rows),
    ),
  );
  fc.assert(fc.property(rowsOf(3, fc.integer({ min: -20, max: 20 }), 60), (rows) => expectSorted(3, rows)));
});

test("so they do where nearly all fall into one slice of time", () => {
  // one late straggler squeezes the others into the first slice, more of them than insertion is used for
  const crowd = fc.array(fc.integer({ min: 0, max: 5_000 }), { minLength: 150, maxLength: 400 });
  const property = fc.property(crowd, (times) =>
    expectSorted(
      2,
      [...times, 2_000_000_000].map((time) => ({ group: 1, time })),
    ),
  );
  fc.assert(property, { numRuns: 30 });
});

test("no rows make empty groups", () => {
  expectSorted(3, []);
});
