import type { Problem } from "../../../src/planner/problem.ts";
import {
  arrives,
  departs,
  locomotive,
  policyWith,
  section,
  smallProblem,
  through,
  train,
} from "../small-problem.ts";

/**
 * `count` trains on lines of their own, three sections each, all on their way at the same time; each draws 500 mA while it
 * runs and nothing while it stands. One supply and one district of 10 A, a fifth of both to stay free.
 */
export function lines(count: number, given: Partial<Problem> = {}): Problem {
  return smallProblem({
    policy: policyWith({ reserve: 0.2, pickUpMs: 0, handInMs: 0 }),
    sections: Array.from({ length: 3 * count }, (_, i) => section(`S${i}`, 2_000)),
    links: Array.from({ length: count }, (_, i) => [
      { from: 3 * i, to: 3 * i + 1, oneWay: false },
      { from: 3 * i + 1, to: 3 * i + 2, oneWay: false },
    ]).flat(),
    locomotives: Array.from({ length: count }, (_, i) => locomotive(`E${i}`, { runningMa: 500 })),
    trains: Array.from({ length: count }, (_, i) =>
      train(`${i}`, 400, [departs(3 * i, 100), through(3 * i + 1), arrives(3 * i + 2, 200)], {
        power: [{ locomotive: i, atRear: false }],
      }),
    ),
    ...given,
  });
}
