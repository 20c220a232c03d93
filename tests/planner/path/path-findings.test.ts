import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { Finding, FindingCode } from "../../../src/planner/findings.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import {
  arrives,
  calls,
  departs,
  locomotive,
  section,
  smallProblem,
  through,
  train,
} from "../small-problem.ts";

const find = (problem: Problem, code: FindingCode): Finding[] =>
  check(problem).findings.filter((finding) => finding.code === code);

/** 1,000 mm in 10 s is 100 mm/s: 31.32 km/h in 1:87. */
const ROADS = [section("A", 1_000), section("B", 1_000), section("C", 1_000)];
const RUN = [departs(0, 100), through(1), arrives(2, 120)];

describe("sections that are not linked", () => {
  test("are found where the path goes from one to the other", () => {
    const problem = smallProblem({
      sections: ROADS,
      links: [{ from: 0, to: 1, oneWay: false }],
      trains: [train("1", 500, RUN)],
    });
    const [finding, ...more] = find(problem, "path-not-linked");
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: "stops",
      trains: [0],
      sections: [1, 2],
      pathEntry: 2,
      atMs: 110_000,
    });
  });

  test("include a one-way link the wrong way", () => {
    const links = [
      { from: 1, to: 0, oneWay: true },
      { from: 1, to: 2, oneWay: true },
    ];
    const found = find(
      smallProblem({ sections: ROADS, links, trains: [train("1", 500, RUN)] }),
      "path-not-linked",
    );
    expect(found.map(({ pathEntry }) => pathEntry)).toEqual([1]);
  });

  test("do not include a section named again for a reversal", () => {
    const path = [departs(0, 100), calls(1, 110, 140), through(1), arrives(0, 160)];
    expect(
      find(smallProblem({ sections: ROADS, trains: [train("1", 500, path)] }), "path-not-linked"),
    ).toEqual([]);
  });
});

describe("times that run backwards", () => {
  const backwards = smallProblem({
    sections: ROADS,
    trains: [train("1", 500, [departs(0, 100), calls(1, 90, 95), arrives(2, 120)]), train("2", 500, RUN)],
  });

  test("are found with how far back they go", () => {
    expect(find(backwards, "path-times-backwards")).toMatchObject([
      {
        severity: "stops",
        trains: [0],
        sections: [1],
        pathEntry: 1,
        measured: 10_000,
        limit: 0,
        unit: "ms",
        atMs: 90_000,
      },
    ]);
  });

  test("include a run that takes no time", () => {
    const path = [departs(0, 100), arrives(1, 100)];
    expect(
      find(smallProblem({ sections: ROADS, trains: [train("1", 500, path)] }), "path-times-backwards"),
    ).toMatchObject([{ measured: 0, pathEntry: 1 }]);
  });

  test("leave the train out of occupation, so that it clashes with nobody", () => {
    expect(check(backwards).occupations.map((occupation) => occupation.train)).toEqual([1, 1, 1]);
    expect(find(backwards, "section-clash")).toEqual([]);
  });
});

describe("a speed", () => {
  const slow = (sectionKmh: number, engineKmh: number) =>
    smallProblem({
      sections: [section("A", 1_000), section("B", 1_000), section("C", 1_000, { maxSpeedKmh: sectionKmh })],
      locomotives: [locomotive("L", { maxSpeedKmh: engineKmh })],
      trains: [train("1", 500, RUN, { power: [{ locomotive: 0, atRear: false }] })],
    });

  test("above a section's limit is found with the lowest limit passed", () => {
    expect(find(slow(20, 30), "path-too-fast")).toMatchObject([
      { severity: "stops", sections: [2], locomotives: [], limit: 20, unit: "km/h", pathEntry: 2 },
    ]);
    expect(find(slow(20, 30), "path-too-fast")[0]?.measured).toBeCloseTo(31.32, 9);
  });

  test("above the locomotive's limit is found with the locomotive", () => {
    expect(find(slow(40, 30), "path-too-fast")).toMatchObject([
      { sections: [], locomotives: [0], limit: 30, pathEntry: 1 },
    ]);
  });

  // 1:87: 1,000 mm in 10 s are 100 mm/s, 31.32 km/h, as in the design's worked example; 20 km/h are allowed in A
  const leavingSlow = (lengthMm: number) =>
    find(
      smallProblem({
        sections: [
          section("A", 1_000, { maxSpeedKmh: 20 }),
          section("B", 1_000),
          section("C", 1_000),
          section("D", 1_000),
        ],
        trains: [train("1", lengthMm, [departs(0, 0), calls(1, 20, 50), calls(2, 60, 60), arrives(3, 70)])],
      }),
      "path-too-fast",
    );

  test("with the tail still in a slow section is found, until the tail has cleared it", () => {
    // 50 mm/s to B; then at 100 mm/s from B to C, its tail in A when it is longer than B, and on to D, when longer than both
    expect(leavingSlow(1_000)).toEqual([]);
    expect(leavingSlow(1_001)).toMatchObject([
      { sections: [0], pathEntry: 0, limit: 20, span: { startMs: 50_000, endMs: 60_000 } },
    ]);
    expect(leavingSlow(2_001)).toMatchObject([
      { sections: [0], span: { startMs: 50_000, endMs: 60_000 } },
      { sections: [0], span: { startMs: 60_000, endMs: 70_000 } },
    ]);
  });

  test("at the limit is none, and neither is one that only rounding to whole ms makes", () => {
    expect(find(slow(31.32, 31.3), "path-too-fast")).toEqual([]);
    expect(find(slow(0, 31.2), "path-too-fast")).toHaveLength(1);
  });
});

describe("a section that nothing feeds", () => {
  const fed = (given: Parameters<typeof section>[2]) =>
    find(
      smallProblem({
        sections: [ROADS[0], section("B", 1_000, given), ROADS[2]].map((s) => s ?? section("", 1)),
        trains: [train("1", 500, RUN)],
      }),
      "path-section-not-fed",
    );

  test("is found where a path goes over it", () => {
    expect(fed({ control: "dead" })).toMatchObject([
      { sections: [1], pathEntry: 1, span: { startMs: 100_000, endMs: 115_000 } },
    ]);
    expect(fed({ control: "digital", district: -1 })).toHaveLength(1);
    expect(fed({ control: "changeover", district: -1 })).toHaveLength(1);
    expect(fed({ control: "digital" })).toEqual([]);
  });
});

describe("between analog and digital track", () => {
  const crossing = (
    middle: Parameters<typeof section>[2],
    path = [departs(0, 100), calls(1, 110, 150), arrives(2, 160)],
    mm = 500,
    code: FindingCode = "path-no-changeover",
  ) =>
    find(
      smallProblem({
        sections: [
          ROADS[0] ?? section("", 1),
          section("B", 1_000, middle),
          section("C", 1_000, { control: "analog", outputs: [0] }),
        ],
        controllers: [{ code: "K", transformerMa: 1_000, accessoryMa: 0 }],
        outputs: [{ code: "O", controller: 0, ratingMa: 1_000 }],
        trains: [train("1", mm, path)],
      }),
      code,
    );
  const changeover = { control: "changeover", outputs: [0] } as const;

  test("a call in a changeover section that holds the train lets it pass", () => {
    expect(crossing(changeover)).toEqual([]);
    expect(crossing(changeover, undefined, 1_000)).toEqual([]);
  });

  test("a train that stands out of it joins both kinds of track, which is told instead", () => {
    expect(crossing(changeover, undefined, 1_001)).toEqual([]);
    expect(crossing(changeover, undefined, 1_001, "train-bridges-feeds")).toMatchObject([
      { severity: "stops", sections: [1], pathEntry: 1, measured: 1_001, limit: 1_000, unit: "mm" },
    ]);
  });

  test("a pass, or no changeover section, does not", () => {
    expect(crossing(changeover, [departs(0, 100), calls(1, 110, 110), arrives(2, 160)])).toHaveLength(1);
    expect(crossing({ control: "digital" })).toMatchObject([
      { severity: "stops", sections: [1, 2], pathEntry: 2 },
    ]);
  });
});

describe("a train longer than the road", () => {
  const long = (path: Parameters<typeof train>[2]) =>
    find(
      smallProblem({
        sections: ROADS.map((road) => ({ ...road, mustClear: true })),
        trains: [train("1", 1_500, path)],
      }),
      "train-longer-than-road",
    ).map(({ pathEntry }) => pathEntry);

  test("is found at every stand, first and last included, but not where it passes", () => {
    expect(long([departs(0, 100), calls(1, 110, 140), arrives(2, 150)])).toEqual([0, 1, 2]);
    expect(long([departs(0, 100), calls(1, 110, 110), arrives(2, 150)])).toEqual([0, 2]);
  });

  test("is none where standing out fouls nothing", () => {
    expect(
      find(smallProblem({ sections: ROADS, trains: [train("1", 1_500, RUN)] }), "train-longer-than-road"),
    ).toEqual([]);
  });
});

test("a train that arrives after the slot's end is named with by how much", () => {
  const problem = smallProblem({
    slot: { startMs: 0, endMs: 115_000 },
    sections: ROADS,
    trains: [train("1", 500, RUN)],
  });
  expect(find(problem, "train-outside-slot")).toMatchObject([
    { severity: "warns", trains: [0], measured: 5_000, limit: 0, span: { startMs: 115_000, endMs: 120_000 } },
  ]);
});
