import { describe, expect, test } from "vitest";
import { check } from "../../../src/planner/check.ts";
import type { Problem } from "../../../src/planner/problem.ts";
import { judgeAssignment } from "../../../src/planner/verify/judge-assignment.ts";
import { judgeCore } from "../../../src/planner/verify/judge-core.ts";
import { arrives, calls, departs, section, through, train } from "../small-problem.ts";
import { analog, branch, hauledBy } from "./branch.ts";

// set-up and release 5 s, pick-up 60 s, hand-in 30 s, release dwell 30 s; every section 1 m, every train 0.5 m
const M = 1_000;
const ROAD = [analog("a", M, [0, 1]), analog("b", M, [0, 1]), analog("c", M, [0, 1])];

describe("runs", () => {
  test("a run lasts from pick-up before departure to hand-in after arrival", () => {
    const { runs } = check(
      branch(ROAD, [train("1", 500, [departs(0, 600), through(1), arrives(2, 620)])]),
    ).analog;
    expect(runs).toMatchObject([
      { train: 0, span: { startMs: 540_000, endMs: 650_000 }, candidates: [0, 1] },
    ]);
  });

  test("its sections are switched to the output from set-up before the head to release after the tail", () => {
    // 2 m in 20 s: the head enters b at 600 and c at 610, the tail clears a at 605 and b at 615
    const [run] = check(branch(ROAD, [train("1", 500, [departs(0, 600), through(1), arrives(2, 620)])]))
      .analog.runs;
    expect(run?.sections).toEqual([0, 1, 2]);
    expect(run?.sectionSpans).toEqual([
      { startMs: 540_000, endMs: 610_000 },
      { startMs: 595_000, endMs: 620_000 },
      { startMs: 605_000, endMs: 650_000 },
    ]);
  });

  test("a stand of the release dwell lets the train take another output, a shorter one or a pass does not", () => {
    const runs = (dwell: number) =>
      check(branch(ROAD, [train("1", 500, [departs(0, 600), calls(1, 610, 610 + dwell), arrives(2, 700)])]))
        .analog.runs;
    expect(runs(30).map(({ span }) => span)).toEqual([
      { startMs: 540_000, endMs: 615_000 },
      { startMs: 635_000, endMs: 730_000 },
    ]);
    expect(runs(29)).toHaveLength(1);
    expect(runs(0)).toHaveLength(1);
  });

  test("parked stock stands in a section that is switched off", () => {
    const [run] = check(branch(ROAD, [train("1", 500, [departs(0, 600), arrives(1, 610)])])).analog.runs;
    expect(run?.sectionSpans.at(-1)?.endMs).toBe(640_000);
  });

  test("a train longer than its road is fed in every section that it covers", () => {
    // 1.5 m: at the call in b it still covers a, at the end c and b
    const long = train("1", 1_500, [departs(0, 600), calls(1, 610, 650), arrives(2, 660)]);
    const { runs } = check(branch(ROAD, [long])).analog;
    expect(runs.map(({ sections }) => sections)).toEqual([
      [0, 1],
      [0, 1, 2],
    ]);
  });
});

describe("changing over", () => {
  const sections = [
    section("main", M),
    section("x", M, { control: "changeover", outputs: [0] }),
    analog("b", M, [0]),
  ];

  test("a section is fed by the output only after it has left the digital supply, at set-up before departure", () => {
    const plan = branch(sections, [train("1", 500, [departs(0, 600), calls(1, 610, 660), arrives(2, 670)])]);
    const [run] = check(plan).analog.runs;
    expect(run).toMatchObject({ sections: [1, 2], span: { startMs: 600_000, endMs: 700_000 } });
    expect(run?.sectionSpans[0]?.startMs).toBe(655_000);
    expect(judgeAssignment(plan, check(plan).analog)).toEqual([]);
  });

  test("and left by it before it is digital again, at release after arrival", () => {
    const plan = branch(sections, [train("1", 500, [departs(2, 600), calls(1, 610, 660), arrives(0, 670)])]);
    const [run] = check(plan).analog.runs;
    const at = run?.sections.indexOf(1) ?? -1;
    expect(run?.sectionSpans[at]?.endMs).toBe(615_000);
  });
});

describe("the same engine goes back as another train", () => {
  const there = train("1", 500, [departs(0, 600), through(1), arrives(2, 620)], hauledBy(0));
  const back = (second: number) =>
    train("2", 500, [departs(2, second), through(1), arrives(0, second + 20)], hauledBy(0));

  // back at 650 s: half a metre at 0.1 m/s clears the road after 5 s, release makes it 660 s
  test("its road passes from one output to the other between release and set-up, never fed by two", () => {
    const plan = branch(ROAD, [there, back(650)]);
    const { analog } = check(plan);
    const spans = analog.runs.map((run) => run.sectionSpans[run.sections.indexOf(2)]);
    expect(spans).toEqual([
      { startMs: 605_000, endMs: 625_000 },
      { startMs: 625_000, endMs: 660_000 },
    ]);
    expect(judgeAssignment(plan, analog)).toEqual([]);
  });

  test("however soon it goes back", () => {
    for (let second = 621; second < 720; second++) {
      const plan = branch(ROAD, [there, back(second)]);
      expect(judgeAssignment(plan, check(plan).analog)).toEqual([]);
    }
  });
});

describe("outputs that do not suffice", () => {
  const roads = Array.from({ length: 6 }, (_, at) => analog(`r${at}`, M, [0, 1]));
  const shuttle = (at: number, second: number) =>
    train(`${at}`, 500, [departs(2 * at, second), arrives(2 * at + 1, second + 10)]);

  test("three trains on two outputs at once are named, with the time they share and how many more would serve", () => {
    const plan = branch(roads, [shuttle(0, 600), shuttle(1, 605), shuttle(2, 610)]);
    const { analog, findings } = check(plan);
    expect(analog.status).toBe("impossible");
    expect(findings).toMatchObject([
      {
        code: "outputs-too-few",
        severity: "stops",
        trains: [0, 1, 2],
        sections: [0, 1, 2, 3, 4, 5],
        span: { startMs: 550_000, endMs: 640_000 },
        measured: 3,
        limit: 2,
        needed: 1,
      },
    ]);
    expect(analog.runs.filter(({ output }) => output >= 0)).toHaveLength(2);
    expect(judgeCore(plan, analog, 1_000)).toBe("proven");
  });

  test("two places with too few outputs of their own are two findings, each with what it lacks", () => {
    const apart = roads.map((road, at) => ({ ...road, outputs: at < 4 ? [0] : [1] }));
    const second = [
      train("3", 500, [departs(4, 600), arrives(5, 610)]),
      train("4", 500, [departs(5, 600), arrives(4, 610)]),
    ];
    const { findings } = check(branch(apart, [shuttle(0, 600), shuttle(1, 605), ...second]));
    const tooFew = findings.filter(({ code }) => code === "outputs-too-few");
    expect(tooFew).toMatchObject([
      { trains: [2, 3], sections: [4, 5], needed: 1 },
      { trains: [0, 1], sections: [0, 1, 2, 3], needed: 1 },
    ]);
  });

  test("where no one output reaches all sections of a run, that is the finding", () => {
    const gap = [analog("a", M, [0]), analog("b", M, [1])];
    const plan = branch(gap, [train("1", 500, [departs(0, 600), arrives(1, 610)])]);
    const { analog: report, findings } = check(plan);
    expect(findings).toMatchObject([{ code: "output-none-reaches", trains: [0], sections: [0, 1] }]);
    expect(report).toMatchObject({ status: "impossible", core: [0] });
  });

  test("a section without a selector is reached by none", () => {
    const plan = branch(
      [analog("a", M, [0]), analog("b", M, [])],
      [train("1", 500, [departs(0, 600), arrives(1, 610)])],
    );
    expect(check(plan).findings).toMatchObject([{ code: "output-none-reaches" }]);
  });

  test("what the search leaves undecided stops the session, and says so", () => {
    const plan = branch(roads, [shuttle(0, 600), shuttle(1, 605)]);
    const { analog, findings } = check(plan, { mostStates: 1 });
    expect(analog.status).toBe("not-decided");
    expect(findings).toMatchObject([{ code: "outputs-not-decided", severity: "stops", trains: [0, 1] }]);
  });
});

describe("what outputs carry", () => {
  const run = (locomotives: number[], rakes: number[] = []): Problem =>
    branch(ROAD, [
      train("1", 500, [departs(0, 600), calls(1, 610, 620), arrives(2, 630)], {
        ...hauledBy(...locomotives),
        rakes,
      }),
    ]);

  test("a standing locomotive draws nothing on analog track, its lit coaches do as long as it has the output", () => {
    const [first] = check(run([0], [0])).outputs;
    expect(first?.curve).toEqual([
      [540_000, 60],
      [600_000, 460],
      [610_000, 60],
      [620_000, 460],
      [630_000, 60],
      [660_000, 0],
    ]);
  });

  test("lit coaches that go on as another train are lit once, from whichever output their road is switched to", () => {
    // design 5: over the sections switched to it then. In at 610, out again at 640: the road changes hands between
    // release at 615 and set-up at 635, though the drivers have their outputs to 640 and from 580
    const lit = { ...hauledBy(0), rakes: [0] };
    const { controllers } = check(
      branch(
        ROAD,
        [
          train("1", 500, [departs(0, 600), arrives(1, 610)], lit),
          train("2", 500, [departs(1, 640), arrives(0, 650)], lit),
        ],
        { controllers: [{ code: "K", transformerMa: 1_500, accessoryMa: 0 }] },
      ),
    );
    expect(controllers[0]?.curve).toEqual([
      [540_000, 60],
      [600_000, 460],
      [610_000, 60],
      [640_000, 460],
      [650_000, 60],
      [680_000, 0],
    ]);
  });

  test("coaches placed after the driver has the output are lit from then", () => {
    const late = train("1", 500, [departs(0, 600), arrives(1, 610)], {
      ...hauledBy(0),
      rakes: [0],
      placedMs: 599_000,
    });
    // the next road is switched at set-up already, at 595
    expect(check(branch(ROAD, [late])).outputs[0]?.curve.slice(0, 2)).toEqual([
      [599_000, 60],
      [600_000, 460],
    ]);
  });

  test("the transformer carries the accessories as well", () => {
    const [controller] = check(run([0])).controllers;
    expect(controller).toMatchObject({ peakMa: 500, constantMa: 100, shares: [{ train: 0, ma: 400 }] });
  });

  test("one stalled locomotive that asks more of its output than that can give is warned of, not where the load is too much already", () => {
    // design 5: 60 mA of light, 1,000 mA held in place of 400 running, against 1,000
    const held = (stallMa: number, ...others: number[]) =>
      check({
        ...run([0, ...others], [0]),
        locomotives: run([]).locomotives.map((one, at) => (at === 0 ? { ...one, stallMa } : one)),
      });
    expect(held(1_000).findings).toMatchObject([
      {
        code: "output-trips-on-stall",
        severity: "warns",
        outputs: [0],
        locomotives: [0],
        trains: [0],
        measured: 1_060,
        limit: 1_000,
        span: { startMs: 600_000, endMs: 600_001 },
      },
    ]);
    expect(held(940).findings).toEqual([]);
    expect(held(1_000, 2).findings.map(({ code }) => code)).not.toContain("output-trips-on-stall");
  });

  test("a train too heavy for every output gets one all the same, and the finding", () => {
    const { analog, findings } = check(run([1, 2]));
    expect(analog.status).toBe("assigned");
    expect(findings).toMatchObject([
      { code: "output-over-rating", measured: 1_200, limit: 1_000, overMs: 20_000, atMs: 600_000 },
      { code: "controller-too-close", measured: 1_300, limit: 1_200 },
    ]);
  });
});
