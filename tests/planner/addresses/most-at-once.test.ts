import { describe, expect, it } from "vitest";
import { check } from "../../../src/planner/check.ts";
import { PLAIN } from "../plain-records.ts";
import { arrives, departs, locomotive, section, smallProblem, train } from "../small-problem.ts";

const with0 = { power: [{ locomotive: 0, atRear: false }] };
const with1 = { power: [{ locomotive: 1, atRear: false }] };

/**
 * There and back between A and B: train 1 is handed in 30 s after 3:20, train 2 picked up 60 s before 4:20, so from 3:20 to
 * 3:50 both have a handset (pick-up and hand-in as in small-problem.ts).
 */
const found = (back: typeof with0) =>
  check(
    smallProblem({
      sections: [section("A", 2_000), section("B", 2_000)],
      commandSystems: [{ ...PLAIN.commandSystem, code: "C", handsets: 99, mostAddresses: 1 }],
      locomotives: [locomotive("E7"), locomotive("T3")],
      trains: [
        train("1", 500, [departs(0, 100), arrives(1, 200)], with0),
        train("2", 500, [departs(1, 260), arrives(0, 360)], back),
      ],
    }),
  )
    .findings.filter(({ code }) => code === "addresses-too-many")
    .map(({ trains, measured, limit, span, atMs, overMs }) => ({
      trains,
      measured,
      limit,
      span,
      atMs,
      overMs,
    }));

describe("addresses at once", () => {
  it("are one where one locomotive turns round from train to train", () => {
    expect(found(with0)).toEqual([]);
  });

  it("are two where another locomotive takes the way back before the first is handed in", () => {
    expect(found(with1)).toEqual([
      {
        trains: [0, 1],
        measured: 2,
        limit: 1,
        span: { startMs: 200_000, endMs: 230_000 },
        atMs: 200_000,
        overMs: 30_000,
      },
    ]);
  });
});
