import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { minimumHeadway } from "../../../src/planner/occupation/headway.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import {
  arrives,
  calls,
  departs,
  policyWith,
  section,
  smallProblem,
  through,
  train,
} from "../small-problem.ts";

/** Trains of 120 s each through the middle one of three sections, every `everyS`, in a slot of an hour. */
function hourly(count: number, everyS: number, busyShare = 0.75): Problem {
  const sections = [
    section("A", 1_000, { shared: true }),
    section("B", 5_000),
    section("C", 6_000, { shared: true }),
  ];
  return smallProblem({
    policy: policyWith({ setUpMs: 0, releaseMs: 0, busyShare }),
    sections,
    // 60 mm/s: 5 m and a train of 1.2 m take 100 s + 20 s less what is over when it stands
    trains: Array.from({ length: count }, (_, i) => {
      const start = 1 + i * everyS;
      return train(`T${i}`, 1_000, [departs(0, start), through(1), arrives(2, start + 220)], {
        placedMs: start * 1_000,
        removedMs: (start + 220) * 1_000,
      });
    }),
  });
}

const middle = (problem: Problem) => check(problem).capacity.find((one) => one.section === 1);

describe("how busy a section is", () => {
  it("is its trains' time of the slot, however they are spread over it", () => {
    const one = middle(hourly(1, 300));
    const ten = middle(hourly(10, 300));
    expect(ten?.busyMs).toBe(10 * (one?.busyMs ?? 0));
    expect(ten?.share).toBeCloseTo((ten?.busyMs ?? 0) / 3_600_000, 12);
    expect(middle(hourly(10, 130))?.share).toBe(ten?.share);
  });

  it("counts a train once that turns round in a section which its path names twice in a row", () => {
    // 40 mm/s; design section 4: each entry of the path is taken from set-up to release
    const problem = smallProblem({
      policy: policyWith({ setUpMs: 5_000, releaseMs: 5_000, pickUpMs: 0, handInMs: 0 }),
      sections: [section("A", 2_000), section("B", 2_000)],
      trains: [train("T", 400, [departs(0, 100), calls(1, 150, 180), through(1), arrives(0, 280)])],
    });
    const own = check(problem)
      .occupations.filter((one) => one.section === 1)
      .map(({ blocked }) => blocked);
    // the head is in B from 100 on, the tail past its end at 190; in it again from 180 on, out of it at 240
    expect(own).toEqual([
      { startMs: 95_000, endMs: 195_000 },
      { startMs: 175_000, endMs: 245_000 },
    ]);
    expect(middle(problem)).toMatchObject({ trains: 1, busyMs: 150_000 });
  });

  it("counts a train twice that comes back", () => {
    const problem = smallProblem({
      policy: policyWith({ setUpMs: 5_000, releaseMs: 5_000, pickUpMs: 0, handInMs: 0 }),
      sections: [section("A", 2_000), section("B", 2_000), section("C", 2_000)],
      // 40 mm/s: through B from 100 to 160, when its tail is out; back in it from 300 on
      trains: [
        train("T", 400, [departs(0, 100), through(1), calls(2, 200, 300), through(1), arrives(0, 400)]),
      ],
    });
    expect(middle(problem)).toMatchObject({ trains: 2, busyMs: 2 * 70_000 });
  });

  // UIC Code 406 (2013): additional time rate = 100/rate − 1: at 75 % a third more would go in, from memory
  it("leaves room for as much again as is free", () => {
    const { share = 0, additional } = middle(hourly(12, 200)) ?? {};
    expect(additional).toBeCloseTo(1 / share - 1, 12);
    expect(1 / 0.75 - 1).toBeCloseTo(0.33, 2);
  });

  it("warns above what the policy allows, not at it", () => {
    const problem = hourly(12, 200);
    const share = middle(problem)?.share ?? 0;
    const codes = (busyShare: number) =>
      check({ ...problem, policy: { ...problem.policy, busyShare } }).findings.map(({ code }) => code);
    expect(codes(share)).toEqual([]);
    expect(codes(share - 0.01)).toEqual(["section-too-busy"]);
  });
});

describe("all trains pushed together", () => {
  const together = (problem: Problem) => check(problem).pushedTogether;

  // UIC Code 406 and Pachl: pushed together, like trains follow at their minimum headway; the definition, from memory
  it("like trains follow each other at their minimum headway, however they are spread", () => {
    const one = together(hourly(1, 300)).ms;
    const problem = hourly(1, 300);
    const own = check(problem).occupations.filter(({ section }) => section === 1);
    const box = own.map(({ section, blocked: { startMs, endMs } }) => ({
      section,
      start: startMs,
      end: endMs,
    }));
    const headway = minimumHeadway(box, box);
    expect(headway).toBeGreaterThan(0);
    expect(together(hourly(10, 300)).ms).toBe(one + 9 * headway);
    expect(together(hourly(10, 200))).toEqual(together(hourly(10, 300)));
    expect(together(hourly(10, 300)).share).toBe((one + 9 * headway) / 3_600_000);
  });

  it("trains with nothing in common take no longer than the longest of them", () => {
    const problem = hourly(2, 1_000);
    const apart = { ...problem, sections: problem.sections.map((one) => ({ ...one, shared: true })) };
    expect(together(apart).ms).toBe(together(hourly(1, 300)).ms);
  });
});
