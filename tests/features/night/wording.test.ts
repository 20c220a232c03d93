import { expect, it } from "vitest";
import { toFindingSentence } from "../../../src/features/night/wording.ts";
import { createFinding } from "../../../src/planner/findings.ts";
import type { StandInCode, StandInFinding } from "../../../src/planner/night/try-stand-ins.ts";
import { locomotive, section, smallProblem } from "../../planner/small-problem.ts";

const problem = smallProblem({
  sections: [section("B", 1_000), section("C", 1_000)],
  locomotives: [locomotive("usual"), locomotive("51")],
});

const said = (code: StandInCode, given: Partial<StandInFinding>) =>
  toFindingSentence(
    createFinding({ severity: "stops", span: problem.slot, ...given, code }) as StandInFinding,
    problem,
  );

it.each<[StandInCode, Partial<StandInFinding>, string]>([
  [
    "train-bridges-feeds",
    { sections: [0], measured: 1_200, limit: 1_000 },
    "With it the train is 1200 mm long and would join analog and digital track: it is changed over in section B, which holds 1000 mm.",
  ],
  [
    "return-loop-too-short",
    { sections: [0, 1], measured: 2_100, limit: 2_000 },
    "With it the train is 2100 mm long, and the return loop in sections B and C holds 2000 mm.",
  ],
  [
    "district-trips-on-stall",
    { districts: [0], locomotives: [1], measured: 3_000, limit: 1_000 },
    "With it district D draws 3.00 A of 1.00 A if 51 stalls.",
  ],
  [
    "district-trips-on-restart",
    { districts: [0], measured: 1_200, limit: 1_000 },
    "With it district D would not come up again after a trip: it draws 1.20 A of 1.00 A when power returns.",
  ],
  [
    "address-refused",
    { commandSystems: [0], measured: 10_000, limit: 9_999 },
    "It answers to address 10000, and command system C takes none above 9999.",
  ],
  [
    "district-too-close",
    { districts: [0], severity: "warns", measured: 900, limit: 800 },
    "With it district D draws 900 mA, more than the 800 mA that leave the reserve free.",
  ],
])("what a stand-in brings is said in plain words: %s", (code, given, sentence) => {
  expect(said(code, given)).toBe(sentence);
});
