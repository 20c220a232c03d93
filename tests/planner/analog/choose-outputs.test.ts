import { expect, test } from "vitest";
import type { OpenRun } from "../../../src/planner/analog/build-runs.ts";
import { chooseOutputs } from "../../../src/planner/analog/choose-outputs.ts";
import { analog, branch } from "./branch.ts";

const M = 1_000;
const problem = branch([analog("a", M, [0, 1]), analog("b", M, [0, 1])], []);
const run = (train: number, startMs: number): OpenRun => ({
  train,
  span: { startMs, endMs: startMs + 10 },
  departMs: startMs,
  arriveMs: startMs + 10,
  sections: [0],
  sectionSpans: [{ startMs, endMs: startMs + 10 }],
  litSpans: [{ startMs, endMs: startMs + 10 }],
  candidates: [0, 1],
  runningMa: 400,
});
const runs = [run(0, 0), run(1, 20)];
const uses = new Map([
  [0, runs.map(({ train, span }, at) => ({ section: 0, span, train, run: at, isDigital: false }))],
]);
const given = { status: "assigned", outputs: [0, 1], core: [], unreached: [], unserved: [] } as const;
const plain = { uses, contradictions: [] };

test("outputs are chosen anew where that spares turns and loads nothing worse", () => {
  const choice = chooseOutputs(problem, runs, given, plain, () => 0);
  expect(choice.outputs[0]).toBe(choice.outputs[1]);
  expect(choice.turns).toEqual({ made: 1, atLeast: 1 });
});

test("what would load something worse is not chosen, and then it is not said that fewer turns are impossible", () => {
  const burden = ([first, second]: readonly number[]) => (first === second ? 1 : 0);
  const choice = chooseOutputs(problem, runs, given, plain, burden);
  expect(choice).toEqual({ outputs: [0, 1], turns: { made: 2, atLeast: 1 } });
});

test("an output that bears a train is not given up for one that does not", () => {
  const weak = { ...problem, outputs: problem.outputs.map((each, at) => ({ ...each, ratingMa: at * 500 })) };
  const both = [run(0, 0), { ...run(1, 20), runningMa: 100 }];
  const choice = chooseOutputs(weak, both, { ...given, outputs: [1, 1] }, plain, () => 0);
  expect(choice.outputs).toEqual([1, 1]);
});

test("nothing is chosen where not all have an output, or the plan wants one section for two", () => {
  const unserved = { ...given, status: "impossible", outputs: [0, -1] } as const;
  expect(chooseOutputs(problem, runs, unserved, plain, () => 0)).toEqual({ outputs: [0, -1], turns: null });
  const contradictions = [{ section: 0, trains: [0, 1] as const, span: { startMs: 0, endMs: 1 } }];
  expect(chooseOutputs(problem, runs, given, { uses, contradictions }, () => 0)).toEqual({
    outputs: [0, 1],
    turns: null,
  });
});
