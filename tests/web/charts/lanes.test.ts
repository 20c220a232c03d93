import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { common, toLanes } from "../../../src/web/charts/lanes.ts";

const stretches = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 20 }))
    .map(([fromMs, width]) => ({ fromMs, toMs: fromMs + width })),
  { maxLength: 25 },
);

describe("lanes", () => {
  it("take stretches that only touch into one lane", () => {
    expect(
      toLanes([
        { fromMs: 0, toMs: 5 },
        { fromMs: 5, toMs: 9 },
      ]),
    ).toEqual({ lanes: [0, 0], count: 1 });
  });

  it("never hold two stretches at once, and are as few as the most that ever run at once", () => {
    // the depth of a set of intervals is a lower bound, and earliest-start-first reaches it:
    // Kleinberg and Tardos, Algorithm Design (2005), theorem 4.6
    fc.assert(
      fc.property(stretches, (list) => {
        const { lanes, count } = toLanes(list);
        list.forEach((a, i) => {
          list.slice(i + 1).forEach((b, j) => {
            if (lanes[i] === lanes[i + 1 + j]) expect(common(a, b)).toBeNull();
          });
        });
        const depth = Math.max(
          0,
          ...list.map((a) => list.filter((b) => b.fromMs <= a.fromMs && a.fromMs < b.toMs).length),
        );
        expect(count).toBe(depth);
      }),
    );
  });
});
