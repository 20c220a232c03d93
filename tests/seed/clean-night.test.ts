import { describe, expect, test } from "vitest";
import { CLEAN } from "../../seed/sessions.ts";
import { checkSlot } from "./check-demo.ts";

describe.each(["first", "second"])("the clean night, crew %s", (slot) => {
  const report = checkSlot(CLEAN.session, slot);

  test("runs without a single finding", () => {
    expect(report.findings).toEqual([]);
    expect(report.verdict).toBe("runs");
    expect(report.analog.status).toBe("assigned");
  });

  test("has at least 24 trains, all within the slot", () => {
    expect(report.trains.length).toBeGreaterThanOrEqual(24);
    expect(report.trainsNotInSlot).toEqual([]);
  });

  // plan to about three quarters of capacity: common practice
  test("loads every district, booster, output and transformer to 60 to 78 % of its limit", () => {
    const loads = [...report.districts, ...report.supplies, ...report.outputs, ...report.controllers];
    expect(loads).toHaveLength(4 + 2 + 3 + 2);
    for (const { code, peakMa, limitMa } of loads) {
      expect(peakMa / limitMa, code).toBeGreaterThanOrEqual(0.6);
      expect(peakMa / limitMa, code).toBeLessThanOrEqual(0.78);
    }
  });

  // spare handsets, one in ten and at least one: common practice
  test("is a lively evening that leaves a handset to spare", () => {
    for (const { peak, stock } of report.handsets) {
      expect(peak).toBeGreaterThanOrEqual(6);
      expect(stock - peak).toBeGreaterThanOrEqual(Math.max(1, Math.floor(stock / 10)));
    }
    expect(report.outputNeed.peak).toBe(report.outputNeed.stock);
  });

  test("draws trains on both lines of the graph", () => {
    expect(report.graph.map(({ line }) => line)).toEqual(["main", "branch"]);
    for (const { trains } of report.graph) expect(trains.length).toBeGreaterThanOrEqual(10);
  });
});
