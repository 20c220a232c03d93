import { describe, expect, it } from "vitest";
import { keyFindings } from "../../../src/web/plan/finding-key.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const { findings } = fixtureReport(24);

describe("the key of a finding", () => {
  it("names what the finding is about", () => {
    const trip = findings.filter(({ code }) => code === "district-will-trip");
    expect(keyFindings(trip)[0]?.key).toMatch(/^district-will-trip~East~/);
  });

  it("is the same whatever other findings come before it", () => {
    const all = new Map(keyFindings(findings).map(({ key, finding }) => [finding, key]));
    for (const { key, finding } of keyFindings([...findings].reverse())) expect(key).toBe(all.get(finding));
  });

  it("is one alone even for findings about the same at the same moment", () => {
    const twice = findings.slice(0, 1).flatMap((f) => [f, { ...f }, { ...f }, { ...f, atMs: f.atMs + 1 }]);
    expect(new Set(keyFindings(twice).map(({ key }) => key)).size).toBe(4);
  });
});
