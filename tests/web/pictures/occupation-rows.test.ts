import { describe, expect, it } from "vitest";
import { barsAt, occupationRows } from "../../../src/web/pictures/occupation-rows.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const report = fixtureReport(24);
const rows = occupationRows(report);

describe("rows of the occupation picture", () => {
  it("hold every occupation once, in the layout's order of sections, without sections that stay empty", () => {
    expect(rows.flatMap(({ bars }) => bars)).toHaveLength(report.occupations.length);
    const order = report.sections.map(({ code }) => code);
    const shown = rows.map(({ section }) => order.indexOf(section.code));
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
    const empty = { code: "unused", name: "Unused", control: "digital" as const };
    expect(occupationRows({ ...report, sections: [empty, ...report.sections] })).toHaveLength(rows.length);
  });

  it("need a second lane only where trains overlap, and hatch there", () => {
    const clashing = new Set(
      report.findings.filter((f) => f.code === "section-clash").flatMap((f) => f.sections),
    );
    expect(clashing.size).toBeGreaterThan(0);
    for (const { section, lanes, clashes } of rows) {
      expect(clashes.length > 0).toBe(clashing.has(section.code));
      if (clashes.length > 0) expect(lanes).toBeGreaterThan(1);
    }
  });

  it("say which trains hold a section at a moment, half-open", () => {
    const bar = rows[0]?.bars[0];
    if (!bar) throw new Error("the fixture has occupations");
    expect(barsAt(rows, bar.blockedFromMs)).toContain(bar);
    expect(barsAt(rows, bar.blockedToMs)).not.toContain(bar);
  });
});
