import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { PLAIN } from "../plain-records.ts";
import { policyWith, section, smallProblem, train } from "../small-problem.ts";

// Kleinberg & Tardos, Algorithm Design, 4.1, interval partitioning: fewest rooms = greatest number at once. Ten lectures of the
// slides that go with it: the number of rooms seen, the times from memory, the other two figures calculated.
const LECTURES: [name: string, from: string, to: string][] = [
  ["a", "9:00", "10:30"],
  ["b", "9:00", "12:30"],
  ["c", "9:00", "10:30"],
  ["d", "11:00", "12:30"],
  ["e", "11:00", "14:00"],
  ["f", "13:00", "14:30"],
  ["g", "13:00", "14:30"],
  ["h", "14:00", "16:30"],
  ["i", "15:00", "16:30"],
  ["j", "15:00", "16:30"],
];

const ms = (time: string) => {
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  return (hours * 60 + minutes) * 60_000;
};

/** Each lecture a train on track of its own that needs a handset from its departure to `handInMs` after its arrival. */
function handsetNeed(handInMs: number) {
  const problem = smallProblem({
    slot: { startMs: ms("8:00"), endMs: ms("18:00") },
    policy: policyWith({ pickUpMs: 0, handInMs }),
    commandSystems: [{ ...PLAIN.commandSystem, code: "C", handsets: 3 }],
    sections: LECTURES.flatMap(([name]) => [section(`${name}1`, 1_000), section(`${name}2`, 1_000)]),
    trains: LECTURES.map(([name, from, to], i) =>
      train(name, 500, [
        { section: 2 * i, arriveMs: null, departMs: ms(from) },
        { section: 2 * i + 1, arriveMs: ms(to), departMs: null },
      ]),
    ),
  });
  const { handsets, findings } = check(problem);
  return { peak: handsets[0]?.peak, codes: findings.map((f) => f.code) };
}

describe("ten lectures as ten trains", () => {
  it("need three, touching being no overlap", () => {
    expect(handsetNeed(0)).toEqual({ peak: 3, codes: [] });
  });

  it("need four where intervals are closed, by one ms", () => {
    expect(handsetNeed(1)).toEqual({ peak: 4, codes: ["handsets-too-few"] });
  });

  it("need four with five minutes of turn-round", () => {
    expect(handsetNeed(5 * 60_000)).toEqual({ peak: 4, codes: ["handsets-too-few"] });
  });
});
