import type { Problem } from "../../src/planner/problem.ts";
import { journey, leavesPoint, reachesPoint, runsBackwards } from "./journey.ts";
import { sameStock, standsFrom, standsTo } from "./stock.ts";

/**
 * Occupation of track by stepping every train through every millisecond, and clashes by comparing everything with
 * everything.
 */

export interface SteppedOccupation {
  readonly section: number;
  readonly train: number;
  readonly pathEntry: number;
  readonly enterMs: number | null;
  readonly clearMs: number | null;
  readonly blocked: { readonly startMs: number; readonly endMs: number };
}

export function occupations(problem: Problem): SteppedOccupation[] {
  const { setUpMs, releaseMs } = problem.policy;
  return problem.trains.flatMap((train, index) => {
    if (runsBackwards(train)) return [];
    const way = journey(problem, train);
    return train.path.map(({ section }, entry) => {
      const enterMs = entry === 0 ? null : leavesPoint(way, way.begins[entry] as number);
      const clearMs = reachesPoint(way, (way.ends[entry] as number) + train.lengthMm);
      const blocked = {
        startMs: enterMs === null ? standsFrom(problem, index) : enterMs - setUpMs,
        endMs: clearMs === null ? standsTo(problem, index) : clearMs + releaseMs,
      };
      return { section, train: index, pathEntry: entry, enterMs, clearMs, blocked };
    });
  });
}

export interface Meeting {
  readonly trains: readonly [number, number];
  readonly sections: readonly number[];
  readonly span: { readonly startMs: number; readonly endMs: number };
}

/** Together where only one may be: for each pair of trains, overlaps that overlap or touch are one meeting. */
export function clashes(problem: Problem): Meeting[] {
  const all = occupations(problem);
  const meetings: Meeting[] = [];
  for (const a of all)
    for (const b of all) {
      const section = problem.sections[a.section];
      if (a.train >= b.train || a.section !== b.section || sameStock(problem, a.train, b.train)) continue;
      if (section?.shared && section.control === "digital") continue;
      const startMs = Math.max(a.blocked.startMs, b.blocked.startMs);
      const endMs = Math.min(a.blocked.endMs, b.blocked.endMs);
      if (startMs < endMs)
        meetings.push({ trains: [a.train, b.train], sections: [a.section], span: { startMs, endMs } });
    }
  return mergeTouching(meetings);
}

function mergeTouching(meetings: readonly Meeting[]): Meeting[] {
  const merged = [...meetings];
  for (let i = 0; i < merged.length; i++)
    for (let j = i + 1; j < merged.length; j++) {
      const a = merged[i] as Meeting;
      const b = merged[j] as Meeting;
      const samePair = a.trains[0] === b.trains[0] && a.trains[1] === b.trains[1];
      if (!samePair || a.span.endMs < b.span.startMs || b.span.endMs < a.span.startMs) continue;
      merged.splice(j, 1);
      merged[i] = {
        trains: a.trains,
        sections: [...new Set([...a.sections, ...b.sections])].sort((x, y) => x - y),
        span: {
          startMs: Math.min(a.span.startMs, b.span.startMs),
          endMs: Math.max(a.span.endMs, b.span.endMs),
        },
      };
      // it may now touch one passed before
      i = -1;
      break;
    }
  return merged;
}

export interface Crowd {
  readonly section: number;
  readonly span: { readonly startMs: number; readonly endMs: number };
  /** Longest the trains in it come to at one time. */
  readonly mostMm: number;
  readonly trains: readonly number[];
}

/**
 * Shared sections, looked at in every millisecond: more trains than fit. Trains joined by common stock count
 * once, the longest.
 */
export function crowds(problem: Problem): Crowd[] {
  const all = occupations(problem);
  const found: Crowd[] = [];
  for (const [index, section] of problem.sections.entries()) {
    if (!section.shared || section.control !== "digital") continue;
    const here = all.filter((occupation) => occupation.section === index);
    const from = Math.min(...here.map(({ blocked }) => blocked.startMs));
    const to = Math.max(...here.map(({ blocked }) => blocked.endMs));
    let open: { startMs: number; mostMm: number; trains: Set<number> } | null = null;
    for (let ms = from; ms <= to; ms++) {
      const present = [
        ...new Set(
          here.filter(({ blocked }) => blocked.startMs <= ms && ms < blocked.endMs).map(({ train }) => train),
        ),
      ];
      const different = present.some((a) => present.some((b) => !sameStock(problem, a, b)));
      const families = stockFamilies(problem, present);
      const mm = families
        .map((family) => Math.max(...family.map((train) => problem.trains[train]?.lengthMm ?? 0)))
        .reduce((sum, longest) => sum + longest, 0);
      if (different && mm > section.lengthMm) {
        open ??= { startMs: ms, mostMm: 0, trains: new Set() };
        open.mostMm = Math.max(open.mostMm, mm);
        for (const train of present) open.trains.add(train);
      } else if (open) {
        found.push({
          section: index,
          span: { startMs: open.startMs, endMs: ms },
          mostMm: open.mostMm,
          trains: [...open.trains].sort((a, b) => a - b),
        });
        open = null;
      }
    }
  }
  return found;
}

/** Trains present, put together where a chain of common stock joins them. */
function stockFamilies(problem: Problem, present: readonly number[]): number[][] {
  const families: number[][] = [];
  for (const train of present) {
    const joined = families.filter((family) => family.some((other) => sameStock(problem, train, other)));
    for (const family of joined) families.splice(families.indexOf(family), 1);
    families.push([train, ...joined.flat()]);
  }
  return families;
}
