import { describe, expect, it } from "vitest";
import { barsAt, occupationTable } from "../../../src/web/pictures/occupation-rows.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const report = fixtureReport(24);
const { rows } = occupationTable(report);

describe("rows of the occupation picture", () => {
  it("hold every occupation once, along the line, without sections that stay empty", () => {
    expect(rows.flatMap(({ bars }) => bars)).toHaveLength(report.occupations.length);
    // the fixture's sections are listed from the line's zero on
    const order = report.sections.map(({ code }) => code);
    const shuffled = { ...report, sections: [...report.sections].reverse() };
    const shown = occupationTable(shuffled).rows.map(({ section }) => section.code);
    expect(shown).toEqual(order);
    const empty = { code: "unused", name: "Unused", control: "digital" as const };
    expect(occupationTable({ ...report, sections: [empty, ...report.sections] }).rows).toHaveLength(
      rows.length,
    );
  });

  it("stand under the name of their line once there are several, each at a place of its own", () => {
    const [main] = report.graph;
    const [train] = report.trains;
    if (!main || !train) throw new Error("the fixture has a line and trains");
    const yard = { ...report.occupations[0], section: "yard", train: "none", enterMs: null, clearMs: null };
    const table = occupationTable({
      ...report,
      sections: [{ code: "yard", name: "Yard", control: "digital" }, ...report.sections],
      occupations: [...report.occupations, yard as (typeof report.occupations)[number]],
    });
    expect(table.headings.map(({ name }) => name)).toEqual(["Main line", "Elsewhere"]);
    const places = [...table.headings, ...table.rows].map(({ place }) => place).sort((a, b) => a - b);
    expect(places).toEqual(Array.from({ length: table.places }, (_, i) => i));
  });

  it("need a second lane only where trains overlap, and hatch there", () => {
    const clashing = new Set(
      report.findings.filter((f) => f.code === "section-clash").flatMap((f) => f.sections),
    );
    expect(clashing.size).toBeGreaterThan(0);
    for (const { section, bars, clashes } of rows) {
      expect(clashes.length > 0).toBe(clashing.has(section.code));
      for (const part of clashes) {
        const inPart = bars.filter((b) => b.blockedFromMs < part.toMs && b.blockedToMs > part.fromMs);
        expect(Math.min(...inPart.map((b) => b.of))).toBeGreaterThan(1);
      }
    }
  });

  it("say which trains hold a section at a moment, half-open", () => {
    const bar = rows[0]?.bars[0];
    if (!bar) throw new Error("the fixture has occupations");
    expect(barsAt(rows, bar.blockedFromMs)).toContain(bar);
    expect(barsAt(rows, bar.blockedToMs)).not.toContain(bar);
  });
});
