import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ClockChange, layoutTimeAt } from "../../../src/planner/night/layout-clock.ts";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const noon = (ratio: number) => ({ layoutStartMs: 12 * HOUR, ratio });
const start = (atMs: number): ClockChange => ({ run: "start", atMs });
const pause = (atMs: number): ClockChange => ({ run: "pause", atMs });
const set = (atMs: number, layoutMs: number): ClockChange => ({ run: "set", atMs, layoutMs });

describe("the layout clock", () => {
  // layout time = real time x ratio: common practice of the trade, no source; the figures are calculated from it
  it.each([
    [4, 15 * MINUTE, HOUR],
    [6, 10 * MINUTE, HOUR],
    [8, 7.5 * MINUTE, HOUR],
    [12, 5 * MINUTE, HOUR],
    [10, 22 * MINUTE, 3 * HOUR + 40 * MINUTE],
  ])("at ratio %d brings after %d ms of real time %d ms", (ratio, realMs, layoutMs) => {
    const { layoutStartMs } = noon(ratio);
    expect(layoutTimeAt([start(7)], noon(ratio), 7 + realMs)).toEqual({
      layoutMs: layoutStartMs + layoutMs,
      running: true,
    });
  });

  it("gains nothing in a pause, however long", () => {
    const changes = [start(0), pause(10 * MINUTE), start(45 * MINUTE)];
    expect(layoutTimeAt(changes, noon(10), 30 * MINUTE)).toEqual({
      layoutMs: 13 * HOUR + 40 * MINUTE,
      running: false,
    });
    // 22 real minutes at ratio 10 are 3 h 40, whatever lies between
    expect(layoutTimeAt(changes, noon(10), 57 * MINUTE)).toEqual({
      layoutMs: 15 * HOUR + 40 * MINUTE,
      running: true,
    });
  });

  it("shows its first reading until it is started", () => {
    expect(layoutTimeAt([], noon(4), HOUR)).toEqual({ layoutMs: 12 * HOUR, running: false });
    expect(layoutTimeAt([start(HOUR)], noon(4), HOUR - 1).running).toBe(false);
    expect(layoutTimeAt([start(HOUR)], noon(4), HOUR)).toEqual({ layoutMs: 12 * HOUR, running: true });
  });

  it("goes on from what it is set to, running or not", () => {
    expect(layoutTimeAt([start(0), set(1_000, 5_000)], noon(4), 2_000)).toEqual({
      layoutMs: 9_000,
      running: true,
    });
    expect(layoutTimeAt([start(0), pause(500), set(1_000, 5_000)], noon(4), 2_000)).toEqual({
      layoutMs: 5_000,
      running: false,
    });
  });

  it("takes a second start, or a second pause, for nothing", () => {
    const changes = [start(0), start(400), pause(1_000), pause(1_500), start(2_000)];
    expect(layoutTimeAt(changes, noon(2), 2_100).layoutMs).toBe(12 * HOUR + 2 * 1_100);
  });
});

const ratios = fc.integer({ min: 1, max: 60 });
const nights = fc
  .array(
    fc.record({
      afterMs: fc.integer({ min: 0, max: 40 }),
      run: fc.constantFrom("start" as const, "pause" as const, "set" as const),
      layoutMs: fc.integer({ min: 0, max: 1_000 }),
    }),
    { maxLength: 12 },
  )
  .map((steps) => {
    let atMs = 0;
    return steps.map(({ afterMs, run, layoutMs }): ClockChange => {
      atMs += afterMs;
      return run === "set" ? { run, atMs, layoutMs } : { run, atMs };
    });
  });
const instants = fc.integer({ min: 0, max: 500 });

/** A clock with hands: it is looked at every ms, and moved on by the ratio where it runs. */
function handsAt(changes: readonly ClockChange[], layoutStartMs: number, ratio: number, atMs: number) {
  let layoutMs = layoutStartMs;
  let running = false;
  for (let now = 0; now <= atMs; now++) {
    if (running && now > 0) layoutMs += ratio;
    for (const change of changes.filter((one) => one.atMs === now)) {
      if (change.run === "set") layoutMs = change.layoutMs;
      else running = change.run === "start";
    }
  }
  return { layoutMs, running };
}

describe("on any night the clock", () => {
  it("shows what one shows that is moved on ms by ms", () => {
    fc.assert(
      fc.property(nights, ratios, instants, (changes, ratio, atMs) => {
        expect(layoutTimeAt(changes, { layoutStartMs: 777, ratio }, atMs)).toEqual(
          handsAt(changes, 777, ratio, atMs),
        );
      }),
    );
  });

  it("shows the same however late the night begins", () => {
    fc.assert(
      fc.property(
        nights,
        ratios,
        instants,
        fc.integer({ min: -1e9, max: 1e9 }),
        (changes, ratio, atMs, byMs) => {
          const face = { layoutStartMs: 777, ratio };
          const moved = changes.map((change) => ({ ...change, atMs: change.atMs + byMs }));
          expect(layoutTimeAt(moved, face, atMs + byMs)).toEqual(layoutTimeAt(changes, face, atMs));
        },
      ),
    );
  });

  it("never goes back unless it is set, and never faster than its ratio", () => {
    fc.assert(
      fc.property(nights, ratios, instants, fc.integer({ min: 0, max: 500 }), (all, ratio, atMs, forMs) => {
        const changes = all.filter(({ run }) => run !== "set");
        const face = { layoutStartMs: 777, ratio };
        const gained =
          layoutTimeAt(changes, face, atMs + forMs).layoutMs - layoutTimeAt(changes, face, atMs).layoutMs;
        expect(gained).toBeGreaterThanOrEqual(0);
        expect(gained).toBeLessThanOrEqual(forMs * ratio);
      }),
    );
  });

  it("gains nothing and loses nothing by a pause that ends as it begins", () => {
    fc.assert(
      fc.property(nights, ratios, instants, instants, (changes, ratio, atMs, heldMs) => {
        const face = { layoutStartMs: 777, ratio };
        fc.pre(layoutTimeAt(changes, face, heldMs).running);
        const before = changes.filter((change) => change.atMs <= heldMs);
        const after = changes.slice(before.length);
        const held = [...before, pause(heldMs), start(heldMs), ...after];
        expect(layoutTimeAt(held, face, atMs)).toEqual(layoutTimeAt(changes, face, atMs));
      }),
    );
  });

  it("is no less exact after a thousand pauses", () => {
    const face = { layoutStartMs: 0, ratio: 4.1 };
    const pauses = Array.from({ length: 1_000 }, (_, i) => [start(20 * i), pause(20 * i + 10)]).flat();
    expect(layoutTimeAt(pauses, face, 1e6).layoutMs).toBe(10_000 * 4.1);
  });
});
