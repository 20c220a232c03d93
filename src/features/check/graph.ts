import type { GraphLine } from "../../../shared/check.ts";
import { type HeadPoint, headPoints } from "../../planner/motion/graph.ts";
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
  const heads = plan.problem.trains.map((_, i) => headPoints(plan.problem, i));
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
  const bends: Bend[] = heads
    .filter(({ headMm }) => headMm >= first && headMm <= last)
    .map(({ atMs, headMm }) => [
      atMs,
      interpolate(
        piece.map((a) => [a.headMm, a.lineMm]),
        headMm,
      ),
    ]);
  for (const { headMm, lineMm } of piece) {
    if (heads.some((head) => head.headMm === headMm)) continue;
    bends.push([
      Math.round(
        interpolate(
          heads.map((h) => [h.headMm, h.atMs]),
          headMm,
        ),
      ),
      lineMm,
    ]);
  }
  return bends.sort((a, b) => a[0] - b[0]);
}

/** Piecewise linear through points that rise in x. */
function interpolate(points: readonly (readonly [x: number, y: number])[], x: number): number {
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1] ?? [0, 0];
    const [x1, y1] = points[i] ?? [0, 0];
    if (x > x1) continue;
    return x1 === x0 ? y1 : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  }
  return points.at(-1)?.[1] ?? 0;
}
