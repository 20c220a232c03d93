import type { CheckReport } from "../../../shared/check.ts";
import { type ClashPart, clashParts } from "../charts/clash-parts.ts";
import { toLanes } from "../charts/lanes.ts";

type Occupation = CheckReport["occupations"][number];

/** One occupation as a bar: its lane counts from the row's upper edge. */
export interface OccupationBar extends Occupation {
  readonly lane: number;
}

/** A section with everything that takes it, in order of time. */
export interface OccupationRow {
  readonly section: CheckReport["sections"][number];
  readonly bars: readonly OccupationBar[];
  /** Lanes its bars need side by side; 1 where they never overlap. */
  readonly lanes: number;
  readonly clashes: readonly ClashPart[];
}

function bySection<T extends { readonly section: string }>(items: readonly T[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(item.section);
    if (group) group.push(item);
    else groups.set(item.section, [item]);
  }
  return groups;
}

/** The rows of the occupation picture: the sections that a train takes, in the order of the layout. */
export function occupationRows(report: CheckReport): OccupationRow[] {
  const occupations = bySection(report.occupations);
  const clashes = bySection(clashParts(report));
  return report.sections.flatMap((section) => {
    const taken = occupations.get(section.code);
    if (!taken) return [];
    const stretches = taken.map((o) => ({ fromMs: o.blockedFromMs, toMs: o.blockedToMs }));
    const { lanes, count } = toLanes(stretches);
    const bars = taken
      .map((occupation, i) => ({ ...occupation, lane: lanes[i] ?? 0 }))
      .sort((a, b) => a.blockedFromMs - b.blockedFromMs || a.lane - b.lane);
    return [{ section, bars, lanes: Math.max(1, count), clashes: clashes.get(section.code) ?? [] }];
  });
}

/** Trains that hold a section of the rows at `ms`, one a bar. */
export function barsAt(rows: readonly OccupationRow[], ms: number): OccupationBar[] {
  return rows.flatMap(({ bars }) => bars.filter((b) => b.blockedFromMs <= ms && ms < b.blockedToMs));
}
