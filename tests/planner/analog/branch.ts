import type { Problem, Section, Train } from "../../../src/planner/problem.ts";
import { PLAIN } from "../plain-records.ts";
import { locomotive, section, smallProblem } from "../small-problem.ts";

/** An analog section that these outputs reach. */
export function analog(
  code: string,
  lengthMm: number,
  outputs: readonly number[],
  given: Partial<Section> = {},
) {
  return section(code, lengthMm, { control: "analog", district: -1, outputs, ...given });
}

/** One controller with two outputs of 1 A on a transformer of 1.5 A; locomotives of 400, 500 and 700 mA. */
export function branch(
  sections: readonly Section[],
  trains: readonly Train[],
  given: Partial<Problem> = {},
): Problem {
  return smallProblem({
    sections,
    trains,
    controllers: [{ code: "K", transformerMa: 1_500, accessoryMa: 100 }],
    outputs: [
      { code: "K1", controller: 0, ratingMa: 1_000 },
      { code: "K2", controller: 0, ratingMa: 1_000 },
    ],
    locomotives: [
      locomotive("small", { runningMa: 400, standingMa: 50 }),
      locomotive("middling", { runningMa: 500, standingMa: 50 }),
      locomotive("big", { runningMa: 700, standingMa: 50 }),
    ],
    rakes: [{ ...PLAIN.rake, code: "lit", lightingMa: 60 }],
    ...given,
  });
}

/** A train's locomotives, all at its head. */
export function hauledBy(...locomotives: readonly number[]): Pick<Train, "power"> {
  return { power: locomotives.map((at) => ({ locomotive: at, atRear: false })) };
}
