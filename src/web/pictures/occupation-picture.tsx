import { useEffect, useMemo, useRef } from "preact/hooks";
import type { CheckReport } from "../../../shared/check.ts";
import { count, listed, percent } from "../plan/figures.ts";
import { DataTable } from "./data-table.tsx";
import { OccupationMarks, ROW_PX } from "./occupation-marks.tsx";
import { barsAt, type OccupationRow, occupationTable } from "./occupation-rows.ts";
import { Picture } from "./picture.tsx";
import { Plot } from "./plot.tsx";
import { useLooking } from "./stage.ts";

/** Share of the slot during which a section is taken by at least one train. */
function takenShare(row: OccupationRow, { slot }: CheckReport): number {
  let taken = 0;
  let until = slot.startMs;
  for (const { blockedFromMs, blockedToMs } of row.bars) {
    const from = Math.max(until, blockedFromMs);
    const to = Math.min(slot.endMs, blockedToMs);
    if (to > from) taken += to - from;
    until = Math.max(until, to);
  }
  return taken / (slot.endMs - slot.startMs);
}

function statement(rows: readonly OccupationRow[], report: CheckReport): string {
  const clashing = rows.filter(({ clashes }) => clashes.length > 0).map(({ section }) => section.code);
  if (clashing.length > 0)
    return `Trains are in each other's way on ${count(clashing.length, "section")}: ${listed(clashing.slice(0, 6))}${clashing.length > 6 ? " …" : ""}`;
  const used = `No two trains are in each other's way on the ${count(rows.length, "section")} in use`;
  const open = rows.filter(({ bars }) =>
    bars.some(({ enterMs, clearMs }) => enterMs !== null && clearMs !== null),
  );
  const busiest = [...open].sort((a, b) => takenShare(b, report) - takenShare(a, report))[0];
  return busiest
    ? `${used}; ${busiest.section.code} is taken ${percent(takenShare(busiest, report))} of the time`
    : used;
}

/** What takes every section, as bars from set-up to release; where trains are in each other's way it is hatched. */
export function OccupationPicture() {
  const { view } = useLooking();
  const { report } = view;
  const occupation = useMemo(() => occupationTable(report), [report]);
  const { rows } = occupation;
  const frame = useRef<HTMLDivElement>(null);
  const sections = view.emphasis.value.sections;
  useEffect(
    () => bringIntoFrame(frame.current?.querySelector(".plot") ?? null, rows, sections),
    [rows, sections],
  );
  const heading = statement(rows, report);
  const say = (ms: number) => {
    const bars = barsAt(rows, ms);
    return `${new Set(bars.map(({ section }) => section)).size} of ${count(rows.length, "section")} taken`;
  };
  return (
    <Picture
      id="sections"
      heading={heading}
      now={say}
      isConcerned={sections.size > 0}
      table={<OccupationData rows={rows} />}
    >
      <div ref={frame}>
        <Plot label={heading} height={Math.max(1, occupation.places) * ROW_PX} say={say} scrolls>
          <OccupationMarks table={occupation} />
        </Plot>
      </div>
      <p class="picture-note">
        Each bar runs from set-up to release. Side by side in one row: trains that share the section for a
        while; hatched: they must not.
      </p>
    </Picture>
  );
}

function OccupationData({ rows }: { readonly rows: readonly OccupationRow[] }) {
  const { view } = useLooking();
  return (
    <DataTable
      caption="Occupation of the sections"
      columns={[
        { head: "Section" },
        { head: "Train" },
        { head: "Taken from" },
        { head: "Head enters" },
        { head: "Tail clears" },
        { head: "Freed" },
      ]}
      rows={() => rows.flatMap(({ bars }) => bars.map((bar) => tableRow(bar, view.clocks.layoutText)))}
    />
  );
}

function tableRow(bar: OccupationRow["bars"][number], text: (ms: number) => string): string[] {
  return [
    bar.section,
    bar.train,
    text(bar.blockedFromMs),
    bar.enterMs === null ? "stands there" : text(bar.enterMs),
    bar.clearMs === null ? "stays there" : text(bar.clearMs),
    text(bar.blockedToMs),
  ];
}

/** Scrolls the frame, never the page, until the first of the sections is in sight. */
function bringIntoFrame(
  plot: Element | null,
  rows: readonly OccupationRow[],
  sections: ReadonlySet<string>,
): void {
  const first = rows.find(({ section }) => sections.has(section.code));
  if (plot && first) plot.scrollTop = Math.max(0, (first.place - 3) * ROW_PX);
}
