import { describe, expect, it } from "vitest";
import { PlanView } from "../../../src/web/plan/plan-view.ts";
import { fixtureReport } from "../../browser/fixture/report.ts";

const report = fixtureReport(24);
const open = (search = "") => new PlanView(report, "Europe/London", search);

describe("looking at a plan", () => {
  it("starts at the first finding's moment with nothing chosen and an empty address", () => {
    const view = open();
    expect(view.moment.value).toBe(report.findings[0]?.atMs);
    expect(view.chosen.value).toBeNull();
    expect(view.search.value).toBe("");
  });

  it("starts at the tightest feed's peak on a night without findings", () => {
    const view = new PlanView({ ...report, findings: [] }, "Europe/London", "");
    const feeds = [...report.districts, ...report.supplies];
    const tightest = feeds.sort((a, b) => b.peakMa / b.limitMa - a.peakMa / a.limitMa)[0];
    expect(view.moment.value).toBe(tightest?.peakAtMs);
  });

  it("goes to a finding's very moment when it is chosen, and emphasises its trains in their order", () => {
    const view = open();
    const clash = view.findings.find(({ finding }) => finding.code === "section-clash");
    view.choose(clash?.key ?? null);
    expect(view.moment.value).toBe(clash?.finding.atMs);
    expect([...view.emphasis.value.trains.keys()]).toEqual(clash?.finding.trains);
    expect([...view.emphasis.value.sections]).toEqual(clash?.finding.sections);
  });

  it("is reproduced to the ms by its own address, after every kind of move", () => {
    const view = open();
    const moves = [
      () => view.choose(view.findings[3]?.key ?? null),
      () => view.zoom(0.5),
      () => view.moveTo(4_321_987),
      () => view.zoom(0.25),
      () => view.pan(0.5),
      () => view.pan(-3),
      () => view.moveTo(view.whole.toMs + 99_999),
      () => view.choose(null),
      () => view.zoom(0.001),
      () => view.showWhole(),
    ];
    for (const move of moves) {
      move();
      const again = open(view.search.value);
      expect(again.search.value).toBe(view.search.value);
      expect(again.moment.value).toBe(view.moment.value);
      expect(again.window.value).toEqual(view.window.value);
      expect(again.chosen.value?.key).toBe(view.chosen.value?.key);
    }
  });

  it("opens an address of a finding that is gone as if none were chosen", () => {
    expect(open("?finding=section-clash~gone").chosen.value).toBeNull();
  });

  it("keeps the moment in sight when it moves past the window's edge, at the same closeness", () => {
    const view = open();
    view.zoom(0.1);
    const width = view.window.value.toMs - view.window.value.fromMs;
    view.moveTo(view.window.value.toMs + 600_000);
    const { fromMs, toMs } = view.window.value;
    expect(view.moment.value).toBeGreaterThanOrEqual(fromMs);
    expect(view.moment.value).toBeLessThanOrEqual(toMs);
    expect(Math.abs(toMs - fromMs - width)).toBeLessThanOrEqual(250);
  });
});
