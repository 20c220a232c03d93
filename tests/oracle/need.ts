import type { Problem } from "../../src/planner/problem.ts";
import { controlStretches } from "./control.ts";
import { journey, runsBackwards } from "./journey.ts";

/** Handset need: in any millisecond, the trains that need a handset of each command system. */
export function createNeedSampler(problem: Problem): (ms: number) => number[][] {
  const { pickUpMs, handInMs } = problem.policy;
  const windows = problem.trains.flatMap((train, index) => {
    if (runsBackwards(train)) return [];
    return controlStretches(problem, journey(problem, train)).flatMap((stretch) => {
      if (stretch.control !== "digital") return [];
      const systems = new Set<number>();
      for (let entry = stretch.firstEntry; entry <= stretch.lastEntry; entry++) {
        const section = problem.sections[train.path[entry]?.section ?? -1];
        const district = problem.districts[section?.control === "dead" ? -1 : (section?.district ?? -1)];
        const system = problem.supplies[district?.supply ?? -1]?.commandSystem;
        if (system !== undefined) systems.add(system);
      }
      const fromMs = stretch.departMs - pickUpMs;
      const toMs = stretch.arriveMs + handInMs;
      return [...systems].map((system) => ({ train: index, system, fromMs, toMs }));
    });
  });
  return (ms) =>
    problem.commandSystems.map((_, system) => [
      ...new Set(
        windows
          .filter((window) => window.system === system && window.fromMs <= ms && ms < window.toMs)
          .map(({ train }) => train),
      ),
    ]);
}
