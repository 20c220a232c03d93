import fc from "fast-check";
import { Matrix, SVD } from "ml-matrix";
import { expect, it } from "vitest";
import { type DistrictReading, fitDraws } from "../../../src/planner/measured/fit-draws.ts";
import { tellApart } from "../../../src/planner/measured/told-apart.ts";
import { solveNonNegative } from "../../../src/solving/non-negative-least-squares.ts";

/** What the locomotives are believed to draw, and what they truly draw. */
const BELIEVED = [400, 400, 400, 400];
const TRUE = [250, 610, 380, 90];
const RUNNING: readonly (readonly number[])[] = [[0, 1], [1, 2], [0, 2], [0, 1, 2], [1], [0]];

const readingsOf = (running: readonly (readonly number[])[], noise: (i: number) => number) =>
  running.map(
    (locomotives, i): DistrictReading => ({
      otherMa: 45,
      ma: 45 + locomotives.reduce((sum, l) => sum + (TRUE[l] as number), 0) + noise(i),
      draws: locomotives.map((locomotive) => ({
        locomotive,
        state: "running",
        ma: BELIEVED[locomotive] as number,
      })),
    }),
  );

it("true draws come out of exact readings, exactly", () => {
  const fit = fitDraws(
    readingsOf(RUNNING, () => 0),
    solveNonNegative,
  );
  expect(fit.corrections.map(({ locomotive, newMa }) => [locomotive, newMa])).toEqual([
    [0, 250],
    [1, 610],
    [2, 380],
  ]);
  expect(fit.afterMa).toBe(0);
  expect(fit.beforeMa).toBeGreaterThan(100);
});

it("readings that are off by up to 20 mA leave the true draws within 20 mA", () => {
  const noise = [13, -20, 7, -4, 18, -11];
  const fit = fitDraws(
    readingsOf(RUNNING, (i) => noise[i] as number),
    solveNonNegative,
  );
  for (const { locomotive, newMa } of fit.corrections)
    expect(Math.abs(newMa - (TRUE[locomotive] as number))).toBeLessThanOrEqual(20);
  expect(fit.afterMa).toBeLessThan(fit.beforeMa);
});

it("two that always run together are told apart by no reading, and left alone", () => {
  const fit = fitDraws(
    readingsOf([[0, 1, 2], [2], [0, 1], [2]], () => 0),
    solveNonNegative,
  );
  // 40, -20, 60, -20 mA off; with 2 at 380 alone 60, 0, 60, 0, which is more in the mean
  expect(fit.corrections).toEqual([]);
  expect(fit.withheld).toMatchObject([{ locomotive: 2, ma: 400, newMa: 380, readings: 3 }]);
  expect(fit.leftAlone.map(({ locomotive }) => locomotive)).toEqual([0, 1]);
});

it("what would take the readings farther off while others stay as they are is withheld, and told", () => {
  // A read alone draws 300, believed 200; A, B and C 400 together, believed 400: B and C must draw 100 together, but which
  // of them how much? A at 300 alone would turn differences of 100, 0, 0, 0 into 0, -100, -100, -100: 50 mA into 86.6 mA
  const draw = (locomotive: number, ma: number) => ({ locomotive, state: "running" as const, ma });
  const [a, b, c] = [draw(0, 200), draw(1, 100), draw(2, 100)];
  const together = { ma: 400, otherMa: 0, draws: [a, b, c] };
  const fit = fitDraws([{ ma: 300, otherMa: 0, draws: [a] }, together, together, together], solveNonNegative);
  expect(fit).toMatchObject({ corrections: [], beforeMa: 50, afterMa: 50, differencesMa: [100, 0, 0, 0] });
  expect(fit.withheld).toEqual([{ ...a, newMa: 300, readings: 4 }]);
  expect(fit.leftAlone).toEqual([b, c]);
});

it("corrections bring the readings nearer, all of them and each beside the rest", () => {
  let withheld = 0;
  const reading = fc.record({
    ma: fc.integer({ min: 0, max: 900 }),
    who: fc.uniqueArray(fc.nat(3), { minLength: 1 }),
  });
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 7 }), (all) => {
      const fit = fitDraws(
        all.map(({ ma, who }) => ({
          ...{ ma, otherMa: 0 },
          draws: who.map((locomotive) => ({
            locomotive,
            state: "running",
            ma: BELIEVED[locomotive] as number,
          })),
        })),
        solveNonNegative,
      );
      const off = (corrections: typeof fit.corrections) =>
        all.reduce((sum, { ma, who }) => {
          const planned = who.map(
            (one) =>
              corrections.find(({ locomotive }) => locomotive === one)?.newMa ?? (BELIEVED[one] as number),
          );
          return sum + (ma - planned.reduce((x, y) => x + y, 0)) ** 2;
        }, 0);
      withheld += fit.withheld.length;
      expect(fit.afterMa).toBeLessThanOrEqual(fit.beforeMa);
      expect(Math.sqrt(off(fit.corrections) / all.length)).toBeCloseTo(fit.afterMa, 6);
      for (const one of fit.corrections)
        expect(off(fit.corrections)).toBeLessThanOrEqual(
          off(fit.corrections.filter((other) => other !== one)),
        );
    }),
    { numRuns: 300 },
  );
  expect(withheld).toBeGreaterThan(10);
});

it("no reading, or none with a locomotive in it, corrects nothing", () => {
  expect(fitDraws([], solveNonNegative)).toMatchObject({ corrections: [], beforeMa: 0, afterMa: 0 });
  expect(fitDraws([{ ma: 60, otherMa: 50, draws: [] }], solveNonNegative)).toMatchObject({
    corrections: [],
    afterMa: 10,
  });
});

const zeroOne = fc
  .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 5 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(fc.nat(1), { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    }),
  );

it("what is told apart is what a singular value decomposition finds no freedom in", () => {
  fc.assert(
    fc.property(zeroOne, (rows) => {
      // V · diag(1 where σ > 0) · Vᵀ projects onto the row space: a unit vector lies in it where its diagonal is 1
      const tall = rows.concat(rows[0]?.map(() => (rows[0] as number[]).map(() => 0)) ?? []);
      const { rightSingularVectors: v, diagonal } = new SVD(new Matrix(tall));
      const share = (column: number) =>
        diagonal.reduce((sum, size, k) => sum + (size > 1e-8 ? v.get(column, k) ** 2 : 0), 0);
      const { alone, pivots } = tellApart(rows);
      const expected = (rows[0] as number[]).flatMap((_, column) =>
        share(column) > 1 - 1e-8 ? [column] : [],
      );
      expect(alone).toEqual(expected);
      expect(pivots).toHaveLength(diagonal.filter((size) => size > 1e-8).length);
    }),
    { numRuns: 200 },
  );
});

/** The best with nothing negative, by trying which values are 0: each time the least squares of the rest by SVD. */
function bestByTrying(rows: number[][], right: number[]): number {
  const columns = rows[0]?.length ?? 0;
  let best = right.reduce((sum, y) => sum + y * y, 0);
  for (let set = 1; set < 1 << columns; set++) {
    const kept = Array.from({ length: columns }, (_, c) => c).filter((c) => (set >> c) & 1);
    const part = new Matrix(rows.map((row) => kept.map((c) => row[c] as number)));
    if (part.rows < part.columns) continue;
    const x = new SVD(part).solve(Matrix.columnVector(right)).to1DArray();
    if (x.some((value) => value < -1e-9)) continue;
    best = Math.min(
      best,
      squares(rows, right, (c) => x[kept.indexOf(c)] ?? 0),
    );
  }
  return best;
}

const squares = (rows: number[][], right: number[], x: (column: number) => number) =>
  rows.reduce(
    (sum, row, i) => sum + (row.reduce((all, one, c) => all + one * x(c), 0) - (right[i] as number)) ** 2,
    0,
  );

it("the least squares are as small as any with nothing negative, whichever values end at nothing", () => {
  let bound = 0;
  let free = 0;
  fc.assert(
    fc.property(
      zeroOne,
      fc.array(fc.integer({ min: -300, max: 900 }), { minLength: 8, maxLength: 8 }),
      (all, y) => {
        const { pivots } = tellApart(all);
        fc.pre(pivots.length > 0);
        const rows = all.map((row) => pivots.map((c) => row[c] as number));
        const right = y.slice(0, rows.length);
        const x = solveNonNegative(rows, right);
        if (x.some((value) => value === 0)) bound++;
        else free++;
        expect(Math.min(...x)).toBeGreaterThanOrEqual(0);
        expect(squares(rows, right, (c) => x[c] as number)).toBeCloseTo(bestByTrying(rows, right), 3);
      },
    ),
    { numRuns: 200 },
  );
  expect(bound).toBeGreaterThan(20);
  expect(free).toBeGreaterThan(20);
});
