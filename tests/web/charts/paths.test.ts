import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bendLine, stepArea, stepLine, thin } from "../../../src/web/charts/paths.ts";

const same = (n: number) => n;
const upsideDown = (n: number) => 100 - n;

describe("a step line", () => {
  it("goes across at a value and upright at an instant, to the window's end", () => {
    const d = stepLine(
      [
        [0, 10],
        [40, 30],
      ],
      { fromMs: 0, toMs: 100 },
      same,
      upsideDown,
    );
    expect(d).toBe("M0,90L40,90L40,70L100,70L100,70");
  });

  it("starts at the window's edge with what holds there", () => {
    const d = stepLine(
      [
        [0, 10],
        [40, 30],
      ],
      { fromMs: 50, toMs: 60 },
      same,
      upsideDown,
    );
    expect(d).toBe("M50,70L60,70L60,70");
  });

  it("draws nothing over the limit where the curve stays under it", () => {
    const d = stepArea([[0, 10]], 20, { fromMs: 0, toMs: 50 }, same, upsideDown);
    expect(new Set(d.match(/,(-?[\d.]+)/g))).toEqual(new Set([",80"]));
  });
});

describe("thinning to what a pixel can show", () => {
  it("leaves at most four steps a column and never loses a column's peak or its last value", () => {
    const dense = fc
      .array(fc.integer({ min: 0, max: 5_000 }), { minLength: 1, maxLength: 300 })
      .map((values) => values.map((value, i): [number, number] => [i, value]));
    fc.assert(
      fc.property(dense, fc.integer({ min: 1, max: 40 }), (steps, perPixel) => {
        const x = (ms: number) => ms / perPixel;
        const kept = thin(steps, x);
        const columns = new Set(steps.map(([ms]) => Math.floor(x(ms))));
        expect(kept.length).toBeLessThanOrEqual(4 * columns.size);
        for (const column of columns) {
          const inColumn = (list: readonly [number, number][]) =>
            list.filter(([ms]) => Math.floor(x(ms)) === column);
          const values = (list: readonly [number, number][]) => inColumn(list).map(([, value]) => value);
          expect(Math.max(...values(kept))).toBe(Math.max(...values(steps)));
          expect(values(kept).at(-1)).toBe(values(steps).at(-1));
        }
      }),
    );
  });
});

describe("a train's line", () => {
  it("runs through its bends, and is nothing for a train with fewer than two", () => {
    expect(
      bendLine(
        [
          [0, 5],
          [10, 20],
          [30, 20],
        ],
        same,
        same,
      ),
    ).toBe("M0,5L10,20L30,20");
    expect(bendLine([[0, 5]], same, same)).toBe("");
  });
});
