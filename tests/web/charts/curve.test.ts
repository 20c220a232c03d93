import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Curve, cutToWindow, positionAt, valueAt } from "../../../src/web/charts/curve.ts";

const curve: Curve = [
  [0, 400],
  [10, 900],
  [20, 0],
];

/** Steps at rising instants. */
const curves = fc
  .uniqueArray(fc.tuple(fc.integer({ min: -50, max: 200 }), fc.integer({ min: 0, max: 9 })), {
    selector: ([ms]) => ms,
  })
  .map((steps) => steps.sort((a, b) => a[0] - b[0]));

describe("a step curve", () => {
  it("holds a step's value from its instant until the next", () => {
    expect([valueAt(curve, 0), valueAt(curve, 9), valueAt(curve, 10), valueAt(curve, 99)]).toEqual([
      400, 400, 900, 0,
    ]);
  });

  it("is 0 before its first step, and everywhere without any", () => {
    expect(valueAt(curve, -1)).toBe(0);
    expect(valueAt([], 5)).toBe(0);
  });

  it("has at every instant the value of the last step that is not later", () => {
    fc.assert(
      fc.property(curves, fc.integer({ min: -60, max: 210 }), (steps, ms) => {
        const passed = steps.filter(([from]) => from <= ms);
        expect(valueAt(steps, ms)).toBe(passed.at(-1)?.[1] ?? 0);
      }),
    );
  });

  it("keeps its values when it is cut to a window", () => {
    fc.assert(
      fc.property(
        curves,
        fc.integer({ min: -60, max: 100 }),
        fc.integer({ min: 1, max: 80 }),
        (steps, fromMs, width) => {
          const cut = cutToWindow(steps, { fromMs, toMs: fromMs + width });
          expect(cut[0]?.[0]).toBe(fromMs);
          for (let ms = fromMs; ms < fromMs + width; ms++) expect(valueAt(cut, ms)).toBe(valueAt(steps, ms));
        },
      ),
    );
  });
});

describe("a train between its bends", () => {
  const points = [
    [0, 0],
    [100, 1_000],
    [200, 1_000],
    [300, 0],
  ] as const;

  it("moves at one steady speed, stands, and comes back", () => {
    expect([0, 50, 100, 150, 250, 300].map((ms) => positionAt(points, ms))).toEqual([
      0, 500, 1_000, 1_000, 500, 0,
    ]);
  });

  it("is nowhere before it appears and after it is gone", () => {
    expect(positionAt(points, -1)).toBeNull();
    expect(positionAt(points, 301)).toBeNull();
  });
});
