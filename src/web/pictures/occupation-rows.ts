import type { CheckReport } from "../../../shared/check.ts";
import { type ClashPart, clashParts } from "../charts/clash-parts.ts";
import { type Lane, toLanes } from "../charts/lanes.ts";
import { sectionsAlongLines } from "../charts/section-order.ts";

type Occupation = CheckReport["occupations"][number];

/** One occupation as a bar, in its lane of the row: lanes count from the row's upper edge. */
export type OccupationBar = Occupation & Lane;

/** A section with everything that takes it, in order of time. */
export interface OccupationRow {
  readonly section: CheckReport["sections"][number];
  /** Counts from the picture's upper edge, headings included. */
  readonly place: number;
  readonly bars: readonly OccupationBar[];
  readonly clashes: readonly ClashPart[];
}

/** The occupation of every section in use, along the lines. */
export interface OccupationTable {
  readonly headings: readonly { readonly name: string; readonly place: number }[];
  readonly rows: readonly OccupationRow[];
  /** Rows and headings together. */
  readonly places: number;
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

function toBars(taken: readonly Occupation[]): OccupationBar[] {
  const lanes = toLanes(taken.map((o) => ({ fromMs: o.blockedFromMs, toMs: o.blockedToMs })));
  return taken
    .map((occupation, i) => ({ ...occupation, ...(lanes[i] ?? { lane: 0, of: 1 }) }))
    .sort((a, b) => a.blockedFromMs - b.blockedFromMs || a.lane - b.lane);
}

/** The rows of the occupation picture under the names of their lines; one group alone needs no name. */
export function occupationTable(report: CheckReport): OccupationTable {
  const occupations = bySection(report.occupations);
  const clashes = bySection(clashParts(report));
  const groups = sectionsAlongLines(report);
  const headings: { name: string; place: number }[] = [];
  const rows: OccupationRow[] = [];
  let place = 0;
  for (const { name, sections } of groups) {
    if (groups.length > 1) headings.push({ name: name ?? "Elsewhere", place: place++ });
    for (const section of sections) {
      const taken = occupations.get(section.code) ?? [];
      rows.push({ section, place: place++, bars: toBars(taken), clashes: clashes.get(section.code) ?? [] });
    }
  }
  return { headings, rows, places: place };
}

/** What holds a section of the rows at `ms`, one a bar. */
export function barsAt(rows: readonly OccupationRow[], ms: number): OccupationBar[] {
  return rows.flatMap(({ bars }) => bars.filter((b) => b.blockedFromMs <= ms && ms < b.blockedToMs));
}
