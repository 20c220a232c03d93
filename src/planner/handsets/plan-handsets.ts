import { createAllowance } from "../analog/allowance.ts";
import { irreducibleCore } from "../analog/core.ts";
import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { HandsetSharing, HandsetTurn } from "../result.ts";
import type { Charges } from "./charge-book.ts";
import { claimedFindings } from "./claimed-findings.ts";
import { type HandsetDemand, handsetDemands, type SystemDemands } from "./handset-demands.ts";
import type { Needs } from "./handset-need.ts";
import { shareHandsets } from "./share-handsets.ts";

/** States that one search for handsets may visit: about a tenth of a second; and as many as there are needs. */
const MOST_STATES = 2_000;
/** Needs among which a proof is looked for train by train; of more it is said that they do not fit. */
const MOST_PROVEN = 400;

export interface HandsetPlan {
  readonly findings: readonly Finding[];
  /** One a command system. */
  readonly sharings: readonly HandsetSharing[];
}

/**
 * Which handset each train may have: one that is ready, usable at every place where it calls or passes, and charged from its
 * first pick-up of the evening to its last hand-in, with what people have already left as it is; or the proof that there is
 * no such sharing, and the handsets that people have but should not. Design section 7. `isShort` says of which systems too
 * few handsets are told of by number. Cost: needs × handsets × places, and the search.
 */
export function planHandsets(plan: Plan, needs: Needs, isShort: (system: number) => boolean): HandsetPlan {
  const { problem } = plan;
  const charges = problem.handsets.map(({ batteryMs }) => batteryMs);
  const findings: Finding[] = [];
  const sharings = problem.commandSystems.map((_, system): HandsetSharing => {
    // a plan may give their number alone
    if (!problem.handsets.some((one) => one.commandSystem === system))
      return { status: "not-listed", turns: [] };
    const asked = handsetDemands(plan, needs, system);
    const isEmpty = !problem.handsets.some((one) => one.ready && one.commandSystem === system);
    if (!isEmpty) for (const demand of asked.unserved) findings.push(noneUsable(demand, system));
    if (isShort(system)) return { status: "impossible", turns: [] };
    const { report, finding } = share(asked, charges, system);
    if (finding !== null) findings.push(finding);
    return report;
  });
  return { findings: [...findings, ...claimedFindings(plan, needs)], sharings };
}

function noneUsable({ startMs, endMs, train }: HandsetDemand, system: number): Finding {
  return createFinding({
    code: "handset-none-usable",
    severity: "stops",
    span: { startMs, endMs },
    trains: [train],
    commandSystems: [system],
  });
}

function share(
  { demands, unserved }: SystemDemands,
  charges: Charges,
  system: number,
): { report: HandsetSharing; finding: Finding | null } {
  const allowance = createAllowance(MOST_STATES + demands.length);
  const answer = shareHandsets(demands, charges, allowance);
  switch (answer.status) {
    case "assigned": {
      const turns = demands.map(
        ({ startMs, endMs, train, isClaimed }, i): HandsetTurn => ({
          train,
          span: { startMs, endMs },
          handset: answer.outputs[i] as number,
          isClaimed,
        }),
      );
      return { report: { status: unserved.length > 0 ? "impossible" : "shared", turns }, finding: null };
    }
    case "not-decided":
      return {
        report: { status: "not-decided", turns: [] },
        finding: aboutAll("handsets-not-decided", "warns", demands, system),
      };
    case "impossible": {
      const search = (some: readonly HandsetDemand[]) => shareHandsets(some, charges, allowance).status;
      const core =
        demands.length > MOST_PROVEN
          ? demands
          : irreducibleCore(demands, answer.reached, allowance, search).core.map(
              (at) => demands[at] as HandsetDemand,
            );
      return {
        report: { status: "impossible", turns: [] },
        finding: aboutAll("handsets-do-not-fit", "stops", core, system),
      };
    }
  }
}

/** A finding about some needs and all handsets that could serve any of them. */
function aboutAll(
  code: "handsets-not-decided" | "handsets-do-not-fit",
  severity: Finding["severity"],
  demands: readonly HandsetDemand[],
  system: number,
): Finding {
  const usable = new Set(demands.flatMap(({ candidates }) => candidates));
  return createFinding({
    code,
    severity,
    span: {
      startMs: Math.min(...demands.map(({ startMs }) => startMs)),
      endMs: Math.max(...demands.map(({ endMs }) => endMs)),
    },
    trains: [...new Set(demands.map(({ train }) => train))].sort((a, b) => a - b),
    commandSystems: [system],
    handsets: [...usable].sort((a, b) => a - b),
    measured: demands.length,
    limit: usable.size,
    unit: "handsets",
  });
}
