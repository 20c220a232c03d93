import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Engagement, findBefore, findCollision } from "../../../src/planner/people/engagements.ts";
import {
  findUnavailable,
  findUnusable,
  type HandsetRecord,
  rankHandsets,
} from "../../../src/planner/people/handset-fit.ts";
import { findMissingTags } from "../../../src/planner/people/passing.ts";
import { createWalkTime, WALKING } from "../../../src/planner/people/walking.ts";

describe("walking", () => {
  const spots = [
    { code: "a", xMm: 0, yMm: 0 },
    { code: "b", xMm: 30_000, yMm: 40_000 },
    { code: "c", xMm: null, yMm: null },
    { code: "d", xMm: 0, yMm: 1_000 },
  ];
  const walk = createWalkTime(spots, [
    { from: "a", to: "c", seconds: 95 },
    { from: "c", to: "d", seconds: 40 },
    { from: "d", to: "c", seconds: 50 },
    { from: "d", to: "b", seconds: 3 },
  ]);

  it("is the straight distance times 1.4 at a metre a second, where places have coordinates", () => {
    // 3-4-5 triangle: 50 m straight, 70 m with the detour of design section 7
    expect(walk("a", "b")).toBe(70_000);
  });

  it("is as stated, and the same back where the way back is not stated itself", () => {
    expect([walk("a", "c"), walk("c", "a"), walk("c", "d"), walk("d", "c")]).toEqual([
      95_000, 95_000, 40_000, 50_000,
    ]);
  });

  it("is as stated where that is next to nothing", () => {
    expect([walk("d", "b"), walk("b", "d")]).toEqual([3_000, 3_000]);
  });

  it("is never below the least where it is not stated: at one place, nearby, and where nothing is known", () => {
    for (const [from, to] of [
      ["a", "a"],
      ["a", "d"],
      ["b", "c"],
      [null, "a"],
      ["a", null],
      ["x", "y"],
    ] as const)
      expect([from, to, walk(from, to)]).toEqual([from, to, WALKING.leastMs]);
  });
});

const engagement = (
  fromMs: number,
  untilMs: number,
  startPlace = "a",
  endPlace = startPlace,
): Engagement => ({
  fromMs,
  untilMs,
  startPlace,
  endPlace,
});

describe("two things for one person", () => {
  const walk = (from: string | null, to: string | null) => (from === to ? 30 : 100);

  it("are too much at the same time, and touching is not the same time", () => {
    const has = [engagement(100, 200)];
    expect(findCollision(has, engagement(199, 300), walk)).toMatchObject({ kind: "together" });
    expect(findCollision(has, engagement(200, 300), walk)).toMatchObject({
      kind: "walk",
      haveMs: 0,
      needMs: 30,
    });
    expect(findCollision(has, engagement(230, 300), walk)).toBeNull();
  });

  it("need the walk from where the first ends to where the second begins, whichever is had", () => {
    const has = [engagement(100, 200, "a", "b")];
    expect(findCollision(has, engagement(299, 400, "a", "a"), walk)).toEqual({
      kind: "walk",
      other: has[0],
      otherFirst: true,
      needMs: 100,
      haveMs: 99,
    });
    expect(findCollision(has, engagement(300, 400, "a", "a"), walk)).toBeNull();
    expect(findCollision(has, engagement(230, 400, "b", "a"), walk)).toBeNull();
    expect(findCollision(has, engagement(0, 1, "b", "b"), walk)).toMatchObject({
      otherFirst: false,
      haveMs: 99,
    });
    expect(findCollision(has, engagement(0, 0.5, "a", "a"), walk)).toBeNull();
  });

  it("law: later by any time, all collide alike; and a longer walk never makes fewer collisions", () => {
    const some = fc.record({
      fromMs: fc.nat(1_000),
      long: fc.integer({ min: 1, max: 200 }),
      startPlace: fc.constantFrom("a", "b"),
      endPlace: fc.constantFrom("a", "b"),
    });
    const made = ({
      fromMs,
      long,
      ...places
    }: {
      fromMs: number;
      long: number;
      startPlace: string;
      endPlace: string;
    }) => ({
      ...places,
      fromMs,
      untilMs: fromMs + long,
    });
    fc.assert(
      fc.property(
        fc.array(some, { maxLength: 6 }),
        some,
        fc.nat(10_000),
        fc.nat(300),
        (list, one, shift, more) => {
          const has = list.map(made);
          const later = (e: Engagement) => ({ ...e, fromMs: e.fromMs + shift, untilMs: e.untilMs + shift });
          const now = findCollision(has, made(one), walk);
          expect(findCollision(has.map(later), later(made(one)), walk)?.kind).toBe(now?.kind);
          if (now) expect(findCollision(has, made(one), (a, b) => walk(a, b) + more)).not.toBeNull();
        },
      ),
    );
  });

  it("the latest that ends before is what one walks from", () => {
    const has = [engagement(0, 10), engagement(50, 60), engagement(20, 30)];
    expect(findBefore(has, 60)).toBe(has[1]);
    expect(findBefore(has, 59)).toBe(has[2]);
    expect(findBefore(has, 9)).toBeNull();
  });
});

const handset = (code: string, more: Partial<HandsetRecord> = {}): HandsetRecord => ({
  code,
  commandSystem: "blue",
  kind: "radio",
  places: [],
  batteryMs: null,
  ready: true,
  ...more,
});

describe("a handset", () => {
  const need = { commandSystem: "blue", places: ["west", "mid", "east"] };

  it("must be of the train's system, ready, and in reach wherever the train calls or passes", () => {
    expect(findUnusable(handset("R"), need)).toBeNull();
    expect(findUnusable(handset("R", { commandSystem: "green" }), need)).toEqual({ fault: "other-system" });
    expect(findUnusable(handset("R", { ready: false }), need)).toEqual({ fault: "not-ready" });
    const cable = handset("K", { kind: "tethered", places: ["west", "east"] });
    expect(findUnusable(cable, need)).toEqual({ fault: "out-of-reach", place: "mid" });
    expect(findUnusable(cable, { ...need, places: ["east"] })).toBeNull();
    // a cable that reaches nowhere, and a radio set that is good at one place only
    expect(findUnusable(handset("K", { kind: "tethered" }), need)).toEqual({
      fault: "out-of-reach",
      place: "west",
    });
    expect(findUnusable(handset("R", { places: ["west"] }), need)).toEqual({
      fault: "out-of-reach",
      place: "mid",
    });
  });

  it("is in one pair of hands at a time, half-open", () => {
    const uses = [{ fromMs: 100, untilMs: 200 }];
    const at = (fromMs: number, untilMs: number) => findUnavailable(handset("R"), uses, { fromMs, untilMs });
    expect([at(0, 100), at(200, 300)]).toEqual([null, null]);
    expect(at(199, 300)).toEqual({ fault: "taken", use: uses[0] });
    expect(at(0, 101)).toEqual({ fault: "taken", use: uses[0] });
  });

  it("must last from the evening's first pick-up to its last hand-in", () => {
    const uses = [{ fromMs: 100, untilMs: 200 }];
    const lasting = (batteryMs: number) =>
      findUnavailable(handset("R", { batteryMs }), uses, { fromMs: 300, untilMs: 400 });
    expect(lasting(300)).toBeNull();
    expect(lasting(299)).toEqual({ fault: "battery", awayMs: 300 });
  });

  it("that one has is taken first, then those good at the fewest places", () => {
    const all = [
      handset("R2"),
      handset("R1"),
      handset("K9", { kind: "tethered", places: ["west", "mid", "east"] }),
      handset("F1", { kind: "fixed", places: ["west"] }),
    ];
    expect(rankHandsets(all, new Set()).map(({ code }) => code)).toEqual(["F1", "K9", "R1", "R2"]);
    expect(rankHandsets(all, new Set(["R2"])).map(({ code }) => code)).toEqual(["R2", "F1", "K9", "R1"]);
  });
});

it("what one is not passed for is named", () => {
  expect(findMissingTags(["main line", "yard"], ["yard", "panel"])).toEqual(["main line"]);
  expect(findMissingTags([], [])).toEqual([]);
});
