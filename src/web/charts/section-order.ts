import type { CheckReport, GraphLine } from "../../../shared/check.ts";
import { positionAt } from "./curve.ts";

/** A section's place along a line of the train graph. */
interface Whereabouts {
  readonly line: number;
  readonly mm: number;
}

type Report = Pick<CheckReport, "graph" | "occupations" | "sections">;

/** Sections along one line, from its zero; `name` is null for those that no train of a line passes. */
export interface SectionGroup {
  readonly name: string | null;
  readonly sections: readonly CheckReport["sections"][number][];
}

/** The lines of the train graph, the one with most trains first; equal ones as the report has them. */
export function linesByTraffic(graph: readonly GraphLine[]): GraphLine[] {
  return [...graph].sort((a, b) => b.trains.length - a.trains.length);
}

function middleOf(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

type Piece = { readonly line: number; readonly points: GraphLine["trains"][number]["points"] };

function piecesByTrain(lines: readonly GraphLine[]): Map<string, Piece[]> {
  const pieces = new Map<string, Piece[]>();
  lines.forEach(({ trains }, line) => {
    for (const { train, points } of trains)
      pieces.set(train, [...(pieces.get(train) ?? []), { line, points }]);
  });
  return pieces;
}

/**
 * The middle of where a train's head was between entering a section and entering the next; from the piece's start or to
 * its end for the sections in which the train itself starts or ends. Null where it was not on the line then.
 */
function middleOfPassage({ points }: Piece, enterMs: number | null, nextMs: number | null): number | null {
  const from = enterMs === null ? points[0]?.[1] : positionAt(points, enterMs);
  const to = nextMs === null ? points.at(-1)?.[1] : positionAt(points, nextMs);
  return from == null || to == null ? null : (from + to) / 2;
}

/** Where trains were on the lines while they passed each section: by section, one entry a passage. */
function sightings({ occupations }: Report, lines: readonly GraphLine[]): Map<string, Whereabouts[]> {
  const pieces = piecesByTrain(lines);
  const seen = new Map<string, Whereabouts[]>();
  const ordered = [...occupations].sort((a, b) =>
    a.train === b.train ? a.pathEntry - b.pathEntry : a.train < b.train ? -1 : 1,
  );
  ordered.forEach(({ section, train, enterMs }, i) => {
    const next = ordered[i + 1];
    const nextMs = next?.train === train ? next.enterMs : null;
    for (const piece of pieces.get(train) ?? []) {
      const mm = middleOfPassage(piece, enterMs, nextMs);
      if (mm !== null) seen.set(section, [...(seen.get(section) ?? []), { line: piece.line, mm }]);
    }
  });
  return seen;
}

/** The line most passages were on, and the middle of where they were. */
function settle(seen: readonly Whereabouts[]): Whereabouts | null {
  const count = (line: number) => seen.filter((s) => s.line === line).length;
  const [first, ...rest] = [...new Set(seen.map(({ line }) => line))].sort((a, b) => a - b);
  if (first === undefined) return null;
  const line = rest.reduce((best, other) => (count(other) > count(best) ? other : best), first);
  return { line, mm: middleOf(seen.filter((s) => s.line === line).map(({ mm }) => mm)) };
}

/**
 * The sections in use in the order in which one meets them along the lines, so that the occupation reads like the
 * train graph. The report says where trains are on a line and when they enter a section; together that tells where the
 * section is. Equal places by code. Cost: occupations × pieces a train.
 */
export function sectionsAlongLines(report: Report): SectionGroup[] {
  const lines = linesByTraffic(report.graph);
  const seen = sightings(report, lines);
  const used = new Set(report.occupations.map(({ section }) => section));
  const placed = report.sections
    .filter(({ code }) => used.has(code))
    .map((section) => ({ section, at: settle(seen.get(section.code) ?? []) }));
  const along = lines.map(({ name }, line) => ({
    name,
    sections: placed
      .filter(({ at }) => at?.line === line)
      .sort((a, b) => (a.at?.mm ?? 0) - (b.at?.mm ?? 0) || (a.section.code < b.section.code ? -1 : 1))
      .map(({ section }) => section),
  }));
  const elsewhere = placed.filter(({ at }) => at === null).map(({ section }) => section);
  return [...along, { name: null, sections: elsewhere }].filter(({ sections }) => sections.length > 0);
}
