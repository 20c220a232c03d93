import type { GraphLine } from "../../../shared/check.ts";
import { computeMotions } from "../../planner/motion/compute-motions.ts";
import { type GraphPoint, trainGraphPoints } from "../../planner/motion/graph.ts";
import type { Train } from "../../planner/problem.ts";
import type { PreparedPlan } from "./mapper.ts";

/** A train's head at a place: where in its path, where on the line. */
interface Anchor {
  readonly headMm: number;
  readonly lineMm: number;
}

type Bend = [atMs: number, lineMm: number];

/**
 * The train graph of each line: distance from the line's zero against time, bending where a train calls and at the
 * line's places. A train that leaves the line and comes back is drawn in several pieces.
 */
export function toGraph(plan: PreparedPlan): GraphLine[] {
  const { layout } = plan.source;
  const placeNames = new Map(layout.places.map(({ code, name }) => [code, name]));
  const placeIndex = new Map(layout.places.map(({ code }, i) => [code, i]));
  const motions = computeMotions(plan.problem);
  const lengths = plan.problem.sections.map((section) => section.lengthMm);
  const heads = plan.problem.trains.map((train, i) =>
    toHeadPoints(train, lengths, trainGraphPoints(motions, i)),
  );
  return layout.lines.map((line) => {
    const atMm = new Map(line.stops.map(({ place, atMm }) => [placeIndex.get(place) ?? -1, atMm]));
    return {
      line: line.code,
      name: line.name,
      stops: line.stops.map(({ place, atMm }) => ({ place, name: placeNames.get(place) ?? place, atMm })),
      trains: plan.problem.trains.flatMap((train, i) =>
        toPieces(train, plan, atMm).flatMap((piece) => {
          const points = toBends(piece, heads[i] ?? []);
          return points.length < 2 ? [] : [{ train: train.code, points }];
        }),
      ),
    };
  });
}

/** Cuts a path into stretches between places of the line. A place off the line ends a stretch. */
function toPieces(
  train: Train,
  { problem }: PreparedPlan,
  atMm: ReadonlyMap<number, number>,
): readonly (readonly Anchor[])[] {
  const pieces: Anchor[][] = [[]];
  let headMm = 0;
  train.path.forEach((entry, i) => {
    const section = problem.sections[entry.section];
    headMm += section?.lengthMm ?? 0;
    const place = section?.place ?? -1;
    if (place < 0) return;
    const lineMm = atMm.get(place);
    const next = train.path[i + 1];
    const calls = entry.arriveMs !== null || entry.departMs !== null;
    const leavesPlace = next === undefined || problem.sections[next.section]?.place !== place;
    if (lineMm === undefined) pieces.push([]);
    else if (calls || leavesPlace) pieces.at(-1)?.push({ headMm, lineMm });
  });
  return pieces.filter((piece) => piece.length > 1);
}

/** The bends of one stretch: where the head meets a place, and every call between. */
function toBends(piece: readonly Anchor[], heads: readonly HeadPoint[]): Bend[] {
  const first = piece[0]?.headMm ?? 0;
  const last = piece.at(-1)?.headMm ?? 0;
  const anchored = new Set(piece.map(({ headMm }) => headMm));
  return heads
    .filter(({ headMm, atCall }) => headMm >= first && headMm <= last && (atCall || anchored.has(headMm)))
    .map(({ atMs, headMm }) => [atMs, lineMmAt(piece, headMm)]);
}

/** Between two places in proportion to the train's own way; on its two edges exact. */
function lineMmAt(piece: readonly Anchor[], headMm: number): number {
  const next = Math.max(
    1,
    piece.findIndex((anchor) => anchor.headMm >= headMm),
  );
  const from = piece[next - 1];
  const to = piece[next];
  if (from === undefined || to === undefined) return 0;
  return from.lineMm + ((headMm - from.headMm) / (to.headMm - from.headMm)) * (to.lineMm - from.lineMm);
}

/** A train's head at an instant, mm along its path; passing from section to section, or at a call. */
interface HeadPoint {
  readonly atMs: number;
  readonly headMm: number;
  readonly atCall: boolean;
}

function toHeadPoints(train: Train, lengths: readonly number[], points: readonly GraphPoint[]): HeadPoint[] {
  const ends: number[] = [];
  for (const { section } of train.path) ends.push((ends.at(-1) ?? 0) + (lengths[section] ?? 0));
  // a crossing stands as the end of one section and the beginning of the next, a departure as a call and a crossing
  return points
    .filter(({ atMs, pathEntry, mm }, i) => {
      const before = points[i - 1];
      const again = before?.atMs === atMs && before.pathEntry === pathEntry && before.mm === mm;
      return mm > 0 && !again;
    })
    .map(({ atMs, pathEntry, mm }) => {
      const entry = train.path[pathEntry];
      const atCall = entry !== undefined && (entry.arriveMs !== null || entry.departMs !== null);
      return { atMs, headMm: (ends[pathEntry - 1] ?? 0) + mm, atCall };
    });
}
