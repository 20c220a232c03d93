import type { Locomotive, Problem, Rake, Train } from "../problem.ts";

/** What all locomotives of a train draw from its output while it moves: currents of double heading add up. */
export function enginesMa(problem: Problem, train: number): number {
  const { power } = problem.trains[train] as Train;
  const engines = new Set(power.map(({ locomotive }) => locomotive));
  let ma = 0;
  for (const engine of engines) ma += (problem.locomotives[engine] as Locomotive).runningMa;
  return ma;
}

/** What its lit rakes draw as long as it has an output. */
export function lightingMa(problem: Problem, train: number): number {
  const { rakes } = problem.trains[train] as Train;
  let ma = 0;
  for (const rake of new Set(rakes)) ma += (problem.rakes[rake] as Rake).lightingMa;
  return ma;
}
