import type { PathEntry, Problem, Section, SectionControl, Train } from "../problem.ts";
import { type Move, movesOf } from "./covered-sections.ts";

/**
 * The moves of a train over analog track, put together where it must keep its output between them: it may give it
 * up only where it stands at least releaseDwell, or changes over. None for a path that passes between digital and
 * analog track without changing over: a fault of the path.
 */
export function ridesOf(problem: Problem, index: number): Move[][] {
  const train = problem.trains[index] as Train;
  if (!changesOverRightly(problem, train)) return [];
  const control = (section: number) => (problem.sections[section] as Section).control;
  const mixed = train.path.some(({ section }) => control(section) === "digital");
  const mayGiveUp = (before: Move, after: Move) =>
    after.departMs - before.arriveMs >= Math.max(1, problem.policy.releaseDwellMs) ||
    (mixed && canChangeOver(problem, train, train.path[after.fromEntry]));
  const rides: Move[][] = [];
  for (const move of movesOf(problem, index)) {
    const before = rides.at(-1)?.at(-1);
    if (before && !mayGiveUp(before, move)) rides.at(-1)?.push(move);
    else rides.push([move]);
  }
  const touches = (ride: readonly Move[], kind: SectionControl) =>
    ride.some(({ covered }) => covered.some(({ section }) => control(section) === kind));
  return rides.filter((ride) => touches(ride, "analog"));
}

/**
 * Whether between any digital section of the path and the next analog one, or the other way, it can change over.
 */
function changesOverRightly(problem: Problem, train: Train): boolean {
  let last: SectionControl | null = null;
  let stood = false;
  for (const entry of train.path) {
    const { control } = problem.sections[entry.section] as Section;
    if (canChangeOver(problem, train, entry)) stood = true;
    if (control !== "digital" && control !== "analog") continue;
    if (last !== null && last !== control && !stood) return false;
    last = control;
    stood = false;
  }
  return true;
}

/** A stand in a section that can be either and holds the whole train. */
function canChangeOver(problem: Problem, train: Train, entry: PathEntry | undefined): boolean {
  if (!entry || entry.arriveMs === null || entry.departMs === null) return false;
  const { control, lengthMm } = problem.sections[entry.section] as Section;
  return control === "changeover" && entry.arriveMs < entry.departMs && lengthMm >= train.lengthMm;
}
