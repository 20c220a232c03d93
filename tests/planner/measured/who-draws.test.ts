import { describe, expect, it } from "vitest";
import { createWhoDraws, type Drawing } from "../../../src/planner/measured/who-draws.ts";
import { arrives, calls, departs, locomotive, section, smallProblem, train } from "../small-problem.ts";

const pulls = (engine: number) => ({ power: [{ locomotive: engine, atRear: false }] });
const brief = (draws: Drawing[]) => draws.map(({ locomotive: engine, state, ma }) => [engine, state, ma]);

/** Train 1 runs from A to B in 100 s, calls for 60 s, and goes on to C; all of it is one district. */
const path = [departs(0, 100), calls(1, 200, 260), arrives(2, 360)];
const sections = [section("A", 2_000), section("B", 2_000), section("C", 2_000)];
const engine = (code: string, ma: number) => locomotive(code, { runningMa: ma, standingMa: ma });

describe("who draws from a district at an instant", () => {
  it("runs while its train moves and stands otherwise, even where it draws the same", () => {
    const whoDraws = createWhoDraws(
      smallProblem({ sections, locomotives: [engine("E7", 200)], trains: [train("1", 500, path, pulls(0))] }),
    );
    const at = (second: number) => brief(whoDraws(0, second * 1_000));
    // moves are half-open: at its departure it moves, at its arrival it stands
    expect([99, 100, 199, 200, 259, 260, 400].map((second) => at(second)[0]?.[1])).toEqual([
      "standing",
      "running",
      "running",
      "standing",
      "standing",
      "running",
      "standing",
    ]);
    expect(at(230)).toEqual([[0, "standing", 200]]);
  });
});

describe("who draws after a locomotive failed", () => {
  // E7 has brought train 0 to A before it works train 1
  const problem = smallProblem({
    sections: [section("Z", 2_000), ...sections],
    locomotives: [engine("E7", 200), engine("E9", 300), engine("E11", 400)],
    trains: [
      train("0", 500, [departs(0, 20), arrives(1, 60)], pulls(0)),
      train("1", 500, [departs(1, 100), calls(2, 200, 260), arrives(3, 360)], pulls(0)),
      train("2", 500, [departs(3, 500), arrives(2, 600)], pulls(0)),
    ],
  });
  const failed = { train: 1, locomotive: 0, by: 1, atMs: 230_000 };
  const at = (whoDraws: ReturnType<typeof createWhoDraws>, second: number) =>
    brief(whoDraws(0, second * 1_000)).sort();

  it("is what stands in, from then on; what failed is off the track until a later train has it", () => {
    const whoDraws = createWhoDraws(problem, [failed]);
    expect(at(whoDraws, 229)).toEqual([[0, "standing", 200]]);
    expect(at(whoDraws, 230)).toEqual([[1, "standing", 300]]);
    expect(at(whoDraws, 300)).toEqual([[1, "running", 300]]);
    expect(at(whoDraws, 550)).toEqual([
      [0, "running", 200],
      [1, "standing", 300],
    ]);
  });

  it("is what stands in for the stand-in, and nothing where nothing does", () => {
    const twice = createWhoDraws(problem, [{ ...failed, locomotive: 1, by: 2, atMs: 300_000 }, failed]);
    expect(at(twice, 299)).toEqual([[1, "running", 300]]);
    expect(at(twice, 300)).toEqual([[2, "running", 400]]);
    expect(at(createWhoDraws(problem, [{ ...failed, by: -1 }]), 300)).toEqual([]);
  });
});
