import type { Problem, SectionControl, Train } from "../../src/planner/problem.ts";
import { type Journey, journey, leavesPoint, reachesPoint } from "./journey.ts";
import { carried, itemsOf, nextWorking, previousWorking } from "./stock.ts";

/**
 * Where along its path a train is digital and where analog, read off the raw sections: those that can be either,
 * or that nothing feeds, follow their neighbours, digital where these differ.
 */

/** Path entry by path entry, both included; the changeover entry belongs to the two stretches around it. */
export interface ControlStretch {
  readonly control: "digital" | "analog";
  readonly firstEntry: number;
  readonly lastEntry: number;
  /** By the timetable; where it changes over without a stand: when its head enters, its tail clears. */
  readonly departMs: number;
  readonly arriveMs: number;
  /** When the changeover entry it begins with, or ends with, comes and goes under this control. */
  readonly sinceMs: number;
  readonly untilMs: number;
}

export function controlStretches(problem: Problem, way: Journey): ControlStretch[] {
  const controls = way.train.path.map(({ section }) => problem.sections[section]?.control as SectionControl);
  const stretches: ControlStretch[] = [];
  let begun = {
    control: firstSure(controls, 0),
    firstEntry: 0,
    departMs: way.startMs,
    sinceMs: Number.NEGATIVE_INFINITY,
  };
  let lastSure = controls.findIndex(isSure);
  for (let entry = lastSure + 1; entry < controls.length && lastSure >= 0; entry++) {
    const control = controls[entry] as SectionControl;
    if (!isSure(control)) continue;
    if (control !== begun.control) {
      const crossing = crossingBetween(problem, way, lastSure, entry, begun.control);
      stretches.push({ ...begun, ...crossing.end });
      begun = { control, ...crossing.begin };
    }
    lastSure = entry;
  }
  stretches.push({
    ...begun,
    lastEntry: controls.length - 1,
    arriveMs: way.endMs,
    untilMs: Number.POSITIVE_INFINITY,
  });
  return stretches;
}

/**
 * The stretches of a train, its stock's other workings looked at too: what arrives digitally in a changeover section and
 * leaves it analog as another train is changed over there, at set-up before it leaves, but not before it is there.
 */
export function controlOf(problem: Problem, index: number): ControlStretch[] {
  const train = problem.trains[index] as Train;
  const stretches = controlStretches(problem, journey(problem, train));
  const items = itemsOf(train);
  const turns = (of: readonly (readonly [Train | null, Train | null])[]) =>
    of.map(([before, after]) => turnedBetween(problem, before, after)).filter((ms) => ms !== null);
  const since = turns(items.map((item) => [previousWorking(problem, item, index), train]));
  const until = turns(items.map((item) => [train, nextWorking(problem, item, index)]));
  return stretches.map((stretch, at) => ({
    ...stretch,
    sinceMs: at === 0 ? Math.max(stretch.sinceMs, ...since) : stretch.sinceMs,
    untilMs: at === stretches.length - 1 ? Math.min(stretch.untilMs, ...until) : stretch.untilMs,
  }));
}

function turnedBetween(problem: Problem, before: Train | null, after: Train | null): number | null {
  if (before === null || after === null || carried(problem, before, after)) return null;
  const section = problem.sections[after.path[0]?.section ?? -1];
  const isThere = before.path.at(-1)?.section === after.path[0]?.section && section?.control === "changeover";
  const holds = (section?.lengthMm ?? 0) >= Math.max(before.lengthMm, after.lengthMm);
  const comes = controlStretches(problem, journey(problem, before)).at(-1)?.control === "digital";
  const leaves = controlStretches(problem, journey(problem, after))[0]?.control === "analog";
  const arriveMs = before.path.at(-1)?.arriveMs as number;
  const departMs = after.path[0]?.departMs as number;
  if (!isThere || !holds || !comes || !leaves || departMs < arriveMs) return null;
  return Math.max(arriveMs, departMs - problem.policy.setUpMs);
}

function isSure(control: SectionControl): control is "digital" | "analog" {
  return control === "digital" || control === "analog";
}

function firstSure(controls: readonly SectionControl[], from: number): "digital" | "analog" {
  return controls.slice(from).find(isSure) ?? "digital";
}

/** Where the train changes over between two entries of different control. */
function crossingBetween(
  problem: Problem,
  way: Journey,
  before: number,
  after: number,
  control: "digital" | "analog",
) {
  const { setUpMs, releaseMs } = problem.policy;
  const stand = way.stops.find((stop) => {
    const section = problem.sections[way.train.path[stop.entry]?.section ?? -1];
    return (
      stop.entry > before &&
      stop.entry < after &&
      section?.control === "changeover" &&
      stop.arriveMs < stop.departMs &&
      way.train.lengthMm <= section.lengthMm
    );
  });
  if (stand) {
    const { entry, arriveMs, departMs } = stand;
    const switchMs =
      control === "digital"
        ? Math.max(arriveMs, departMs - setUpMs)
        : Math.min(departMs, arriveMs + releaseMs);
    return {
      end: { lastEntry: entry, arriveMs, untilMs: switchMs },
      begin: { firstEntry: entry, departMs, sinceMs: switchMs },
    };
  }
  const next = control === "digital" ? after : before + 1;
  const cleared = reachesPoint(way, (way.ends[next - 1] as number) + way.train.lengthMm);
  return {
    end: { lastEntry: next - 1, arriveMs: cleared ?? way.endMs, untilMs: Number.POSITIVE_INFINITY },
    begin: {
      firstEntry: next,
      departMs: leavesPoint(way, way.begins[next] as number) as number,
      sinceMs: Number.NEGATIVE_INFINITY,
    },
  };
}

/** Whether a path entry is under digital control in that millisecond. */
export function isDigital(problem: Problem, stretches: readonly ControlStretch[], entry: number, ms: number) {
  const dead = (index: number) => problem.sections[index]?.control === "dead";
  return (section: number) =>
    !dead(section) &&
    stretches.some(
      (stretch) =>
        stretch.control === "digital" &&
        entry >= stretch.firstEntry &&
        entry <= stretch.lastEntry &&
        (entry !== stretch.firstEntry || ms >= stretch.sinceMs) &&
        (entry !== stretch.lastEntry || ms < stretch.untilMs),
    );
}
