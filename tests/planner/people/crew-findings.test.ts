import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { WALKING } from "../../../src/planner/people/walking.ts";
import type { CrewMember, Handset, Problem, Turn } from "../../../src/planner/problem.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, policyWith, section, smallProblem, train } from "../small-problem.ts";

const member = (code: string, given: Partial<CrewMember> = {}): CrewMember => ({
  code,
  passedFor: ["main"],
  junior: false,
  ...given,
});
const handset = (code: string, given: Partial<Handset> = {}): Handset => ({
  code,
  commandSystem: 0,
  kind: "radio",
  places: [],
  batteryMs: null,
  ready: true,
  ...given,
});
const turn = (of: number, who: number, hand = -1): Turn => ({ train: of, member: who, handset: hand });

/**
 * Three trains, each on a pair of sections of its own: 0 from place 0 to place 1 at 100–200 s, 1 from place 2 to place 0 at
 * 300–400 s, 2 from place 0 to place 2 at 150–250 s. A handset is needed from 10 s before to 5 s after.
 */
function plan(given: Partial<Problem>): Problem {
  const pair = (name: string, from: number, to: number) => [
    section(`${name}1`, 2_000, { place: from }),
    section(`${name}2`, 2_000, { place: to }),
  ];
  return smallProblem({
    policy: policyWith({ pickUpMs: 10_000, handInMs: 5_000 }),
    places: [
      { code: "west", xMm: 0, yMm: 0 },
      { code: "mid", xMm: 30_000, yMm: 0 },
      { code: "east", xMm: 30_000, yMm: 40_000 },
    ],
    sections: [...pair("A", 0, 1), ...pair("B", 2, 0), ...pair("C", 0, 2)],
    links: [0, 2, 4].map((from) => ({ from, to: from + 1, oneWay: false })),
    trains: [
      train("A", 500, [departs(0, 100), arrives(1, 200)], { requires: ["main"] }),
      train("B", 500, [departs(2, 300), arrives(3, 400)], { requires: ["main"] }),
      train("C", 500, [departs(4, 150), arrives(5, 250)], { requires: ["main", "express"] }),
    ],
    ...given,
  });
}
const found = (given: Partial<Problem>) =>
  check(plan(given)).findings.map(({ code, trains, members, measured, limit }) => [
    code,
    trains,
    members,
    measured,
    limit,
  ]);
const crewed = (members: CrewMember[], turns: Turn[], isSupervised = true) => ({
  crew: { members, turns, isSupervised },
});

describe("who drives what", () => {
  it("is nobody's business while nobody has said", () => {
    expect(found({})).toEqual([]);
  });

  // design section 7: straight distance × detour / walking speed; 40 m apart is 56 s at 1.4 and 1 m/s
  it("needs the walk from where one train ends to where the next begins", () => {
    const crew = crewed([member("ada")], [turn(0, 0), turn(1, 0)]);
    // in hand until 205 s, the next from 290 s: 85 s
    expect(found(crew)).toEqual([]);
    const slow = {
      ...crew,
      policy: policyWith({ pickUpMs: 10_000, handInMs: 5_000, walkingMmPerSecond: 500 }),
    };
    expect(found(slow)).toEqual([["walk-too-short", [0, 1], [0], 85_000, 112_000]]);
    expect(found({ ...slow, walks: [{ from: 1, to: 2, ms: 85_000 }] })).toEqual([]);
    expect(found({ ...slow, walks: [{ from: 2, to: 1, ms: 85_001 }] })).toEqual([
      ["walk-too-short", [0, 1], [0], 85_000, 85_001],
    ]);
  });

  it("needs no longer than is stated, and where nothing is stated and near, the least", () => {
    const near = {
      ...crewed([member("ada")], [turn(0, 0), turn(1, 0)]),
      // in hand until 255 s, the next from 270 s: 15 s
      policy: policyWith({ pickUpMs: 30_000, handInMs: 55_000, walkingMmPerSecond: 100_000 }),
    };
    expect(found({ ...near, walks: [{ from: 1, to: 2, ms: 10_000 }] })).toEqual([]);
    expect(found(near)).toEqual([["walk-too-short", [0, 1], [0], 15_000, WALKING.leastMs]]);
  });

  it("is one train at a time", () => {
    const both = [member("ada", { passedFor: ["main", "express"] })];
    expect(found(crewed(both, [turn(2, 0), turn(0, 0)]))).toEqual([
      ["member-in-two-places", [0, 2], [0], null, null],
    ]);
  });

  it("takes being passed for all that a train asks", () => {
    expect(found(crewed([member("ada")], [turn(2, 0)]))).toEqual([
      ["driver-not-passed", [2], [0], null, null],
    ]);
  });

  it("takes an adult in the slot where a junior drives", () => {
    const young = [member("tim", { junior: true })];
    expect(found(crewed(young, [turn(0, 0)], false))).toEqual([
      ["junior-unsupervised", [0], [0], null, null],
    ]);
    expect(found(crewed(young, [turn(0, 0)], true))).toEqual([]);
  });
});

describe("the handsets there are", () => {
  const of = (given: Partial<Problem>) =>
    check(plan(given)).findings.map(({ code, trains, handsets, measured, limit }) => [
      code,
      trains,
      handsets,
      measured,
      limit,
    ]);
  const stocked = (handsets: Handset[]) => ({
    handsets,
    commandSystems: [
      { ...PLAIN.commandSystem, code: "C", handsets: handsets.filter(({ ready }) => ready).length },
    ],
  });
  const tethered = (code: string, ...places: number[]) => handset(code, { kind: "tethered", places });

  it("must be usable at every place along a run: one at least", () => {
    expect(of(stocked([handset("R"), tethered("T", 0), handset("S")]))).toEqual([]);
    expect(of(stocked([tethered("T", 0, 1), tethered("U", 0, 1), tethered("V", 0, 2)]))).toEqual([]);
    expect(of(stocked([tethered("T", 0, 1), tethered("U", 0, 1), tethered("V", 2, 1)]))).toEqual([
      ["handset-none-usable", [2], [], null, null],
      ["handset-none-usable", [1], [], null, null],
    ]);
  });

  it("may suffice by number and not by where they reach: the proof names the trains", () => {
    // both A and C run then, and only V reaches the east
    const handsets = [tethered("T", 2), tethered("V", 0, 1, 2)];
    expect(of(stocked(handsets))).toEqual([["handsets-do-not-fit", [0, 2], [1], 2, 1]]);
    expect(of(stocked([...handsets, handset("R")]))).toEqual([]);
  });

  it("are ready, where somebody has one", () => {
    const handsets = [handset("R"), handset("Q", { ready: false }), handset("S"), handset("T")];
    const crew = { ...stocked(handsets), ...crewed([member("ada")], [turn(0, 0, 1)]) };
    expect(of(crew)).toEqual([["handset-not-ready", [0], [1], null, null]]);
  });

  it("suffice only where a charge lasts through the evening: the proof names the trains", () => {
    // A from 90 s to 205 s, C from 140 s to 255 s, B from 290 s to 405 s
    const lasting = (ms: number) => [handset("R", { batteryMs: ms }), handset("S", { batteryMs: ms })];
    expect(of(stocked(lasting(265_000)))).toEqual([]);
    expect(of(stocked(lasting(264_999)))).toEqual([["handsets-do-not-fit", [0, 1, 2], [0, 1], 3, 2]]);
  });

  it("are out of reach of a driver who took the wrong one, or away for longer than they last", () => {
    const handsets = [tethered("T", 0), handset("R", { batteryMs: 200_000 }), handset("S"), handset("Q")];
    const crew = (turns: Turn[]) => ({
      ...stocked(handsets),
      ...crewed([member("ada"), member("ben")], turns),
    });
    expect(of(crew([turn(0, 0, 0)]))).toEqual([["handset-out-of-reach", [0], [0], null, null]]);
    // from 90 s to 405 s
    expect(of(crew([turn(0, 0, 1), turn(1, 1, 1)]))).toEqual([
      ["handset-battery-short", [0, 1], [1], 315_000, 200_000],
    ]);
    expect(of(crew([turn(0, 0, 1), turn(1, 1, 2)]))).toEqual([]);
  });
});
