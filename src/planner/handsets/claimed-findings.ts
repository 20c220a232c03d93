import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Handset } from "../problem.ts";
import { placesAlong, reaches } from "./handset-demands.ts";
import type { Needs } from "./handset-need.ts";

/**
 * Handsets that people have for their trains: not ready, unusable along the run, or away for longer than a charge lasts.
 * Design section 7. Cost: turns × places.
 */
export function claimedFindings(plan: Plan, needs: Needs): Finding[] {
  const { problem } = plan;
  const findings: Finding[] = [];
  const uses = new Map<number, { trains: number[]; fromMs: number; untilMs: number }>();
  const needsOf = new Map<number, number[]>();
  for (let i = 0; i < needs.count; i++) {
    const train = needs.train[i] as number;
    needsOf.set(train, [...(needsOf.get(train) ?? []), i]);
  }
  for (const { train, member, handset } of problem.crew.turns) {
    const own = needsOf.get(train) ?? [];
    if (handset < 0 || own.length === 0) continue;
    const startMs = Math.min(...own.map((i) => needs.fromMs[i] as number));
    const endMs = Math.max(...own.map((i) => needs.toMs[i] as number));
    const before = uses.get(handset);
    uses.set(handset, {
      trains: [...(before?.trains ?? []), train],
      fromMs: Math.min(startMs, before?.fromMs ?? startMs),
      untilMs: Math.max(endMs, before?.untilMs ?? endMs),
    });
    const tell = (code: "handset-not-ready" | "handset-out-of-reach") =>
      findings.push(
        createFinding({
          code,
          severity: "stops",
          span: { startMs, endMs },
          trains: [train],
          members: [member],
          handsets: [handset],
        }),
      );
    if (!(problem.handsets[handset] as Handset).ready) tell("handset-not-ready");
    const isUsable = own.some((i) => {
      const system = needs.system[i] as number;
      return reaches(problem, handset, system, placesAlong(plan, train, system));
    });
    if (!isUsable) tell("handset-out-of-reach");
  }
  for (const [handset, { trains, fromMs, untilMs }] of uses) {
    const { batteryMs } = problem.handsets[handset] as Handset;
    if (batteryMs === null || untilMs - fromMs <= batteryMs) continue;
    findings.push(
      createFinding({
        code: "handset-battery-short",
        severity: "stops",
        span: { startMs: fromMs, endMs: untilMs },
        trains: trains.sort((a, b) => a - b),
        handsets: [handset],
        measured: untilMs - fromMs,
        limit: batteryMs,
        unit: "ms",
      }),
    );
  }
  return findings;
}
