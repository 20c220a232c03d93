import { describe, expect, it } from "vitest";
import { clashParts } from "../../../src/web/charts/clash-parts.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const report = fixtureReport(24);
const clash = report.findings.find(({ code }) => code === "section-clash");

describe("hatched parts", () => {
  it("are the time for which both trains of a clash hold the section, which is the finding's span", () => {
    if (!clash) throw new Error("the fixture has a clash");
    const parts = clashParts({ findings: [clash], occupations: report.occupations });
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatchObject({
      section: clash.sections[0],
      fromMs: clash.span.startMs,
      toMs: clash.span.endMs,
    });
  });

  it("cover the whole span in a shared section that is too full", () => {
    if (!clash) throw new Error("the fixture has a clash");
    const full = { ...clash, code: "shared-section-too-full" as const };
    expect(clashParts({ findings: [full], occupations: [] })).toHaveLength(1);
  });

  it("are none for loads and needs", () => {
    const findings = report.findings.filter(({ code }) => code !== "section-clash");
    expect(findings.length).toBeGreaterThan(0);
    expect(clashParts({ findings, occupations: report.occupations })).toEqual([]);
  });
});
