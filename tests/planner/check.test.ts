import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import { compilePlan } from "../../src/planner/compile-plan.ts";
import { compareFindings } from "../../src/planner/finding-order.ts";
import { createLoadScene, digitalLoad } from "../../src/planner/load/digital-load.ts";
import { loadFindings } from "../../src/planner/load/load-findings.ts";
import { sweepHighLoads, sweepLoads } from "../../src/planner/load/load-sweep.ts";
import { coverage } from "../../src/planner/sweep.ts";
import { makePlan } from "../bench/made-plan.ts";

const SEED = Number(process.env.CHECK_SEED ?? Date.now() % 2_147_483_647);
console.log(`made plans from seed ${SEED}`);
const busy = makeBusyPlan();

test("what stops comes first, then what is earlier; no two findings are equal in order", () => {
  const { findings } = check(busy);
  expect(findings.length).toBeGreaterThan(20);
  for (const [i, finding] of findings.slice(1).entries()) {
    const before = findings[i];
    expect(before && compareFindings(before, finding)).toBeLessThan(0);
    if (before?.severity === "warns") expect(finding.severity).toBe("warns");
    if (before?.severity === finding.severity)
      expect(before.span.startMs).toBeLessThanOrEqual(finding.span.startMs);
  }
});

test("the same problem gives the same result", () => {
  expect(check(busy)).toEqual(check(structuredClone(busy)));
});

test("findings beyond the most that are listed are counted, and the first are the same", () => {
  const all = check(busy);
  const few = check(busy, { mostFindings: 5 });
  expect(few.findings).toEqual(all.findings.slice(0, 5));
  expect(few.findingsLeftOut).toBe(all.findings.length - 5);
  expect(all.findingsLeftOut).toBe(0);
});

test("looking closely only where a rough load is high finds what looking everywhere does", () => {
  let found = 0;
  // most plans have a high load or two: enough of them are seen, however the seed falls
  for (let i = 0; i < 30 || (found <= 10 && i < 600); i++) {
    const plan = compilePlan(makePlan(SEED + i, 40 + 20 * (i % 5), 60));
    const span = coverage(plan.problem, plan.motions, plan.stock);
    const everywhere = sweepLoads(plan.problem, digitalLoad(createLoadScene(plan)), span);
    const high = loadFindings(plan.problem, sweepHighLoads(createLoadScene(plan), span));
    expect(high).toEqual(loadFindings(plan.problem, everywhere));
    found += high.length;
  }
  expect(found).toBeGreaterThan(10);
});

/** A plan with more than a few findings, whatever the seed: the first such one. */
function makeBusyPlan() {
  for (let i = 0; i < 100; i++) {
    const plan = makePlan(SEED + 1_000 * i, 120, 60);
    if (check(plan).findings.length > 20) return plan;
  }
  throw new Error("a hundred plans without twenty findings each");
}
