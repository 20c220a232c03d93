import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { Train } from "../../../shared/timetable.ts";
import { departsIn } from "../../planner/night/in-slot.ts";
import type { Problem } from "../../planner/problem.ts";
import type { PlanSource } from "./plan-source.ts";

/**
 * Command systems, by index, that drive each locomotive in the session's other slots; by its code. Only digital sections
 * count, run as the session has them. Cost: linear in the path entries of those slots.
 */
export function systemsElsewhere(
  { otherSlots, frame }: PlanSource,
  { sections, districts, supplies }: Pick<Problem, "sections" | "districts" | "supplies">,
): ReadonlyMap<string, readonly number[]> {
  const systemOf = new Map(
    sections.map(({ code, control, district }) => [
      code,
      control === "digital" ? (supplies[districts[district]?.supply ?? -1]?.commandSystem ?? -1) : -1,
    ]),
  );
  const found = new Map<string, Set<number>>();
  for (const { lengthMs, layoutStartSeconds, trains } of otherSlots) {
    const clocks = { lengthMs, layoutStartS: layoutStartSeconds, ratio: frame.clockRatio };
    for (const train of trains) {
      if (!departsIn(clocks, parseLayoutTime(train.path[0]?.depart ?? "0:00"))) continue;
      const systems = systemsOn(train, systemOf);
      for (const { locomotive } of train.motivePower) {
        const known = found.get(locomotive) ?? new Set();
        for (const system of systems) known.add(system);
        found.set(locomotive, known);
      }
    }
  }
  return new Map([...found].map(([code, systems]) => [code, [...systems].sort((a, b) => a - b)]));
}

const systemsOn = ({ path }: Train, systemOf: ReadonlyMap<string, number>) =>
  path.map(({ section }) => systemOf.get(section) ?? -1).filter((system) => system >= 0);
