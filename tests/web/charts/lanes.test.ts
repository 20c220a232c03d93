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
    const lanes = toLanes([
      { fromMs: 0, toMs: 5 },
      { fromMs: 5, toMs: 9 },
    ]);
    expect(lanes).toEqual([
      { lane: 0, of: 1 },
      { lane: 0, of: 1 },
    ]);
  });

  it("leave a stretch all the room where it is alone, however crowded it is elsewhere", () => {
    const crowd = [0, 1, 2].map((fromMs) => ({ fromMs, toMs: 10 }));
    const lanes = toLanes([{ fromMs: 20, toMs: 30 }, ...crowd]);
    expect(lanes[0]).toEqual({ lane: 0, of: 1 });
    expect(lanes.slice(1).map(({ of }) => of)).toEqual([3, 3, 3]);
  });

  it("never hold two stretches at once, and are as few as the most that ever run at once", () => {
    // the depth of a set of intervals is a lower bound, and earliest-start-first reaches it:
    // Kleinberg and Tardos, Algorithm Design (2005), theorem 4.6
    fc.assert(
      fc.property(stretches, (list) => {
        const lanes = toLanes(list);
        list.forEach((a, i) => {
          list.forEach((b, j) => {
            if (i < j && lanes[i]?.lane === lanes[j]?.lane) expect(common(a, b)).toBeNull();
            if (common(a, b)) expect(lanes[i]?.of).toBe(lanes[j]?.of);
          });
          expect(lanes[i]?.lane).toBeLessThan(lanes[i]?.of ?? 0);
        });
        const depths = list.map((a) => list.filter((b) => b.fromMs <= a.fromMs && a.fromMs < b.toMs).length);
        expect(Math.max(0, ...lanes.map(({ of }) => of))).toBe(Math.max(0, ...depths));
      }),
    );
  });
});
