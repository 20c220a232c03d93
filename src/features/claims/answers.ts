import type { Claim, ClaimEnd, Swap } from "../../../shared/claims.ts";
import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import { findProblems } from "./examine.ts";
import type { LiveClaim, LiveSwap } from "./live.ts";
import type { Job, NightPlan } from "./plan.ts";
import type { NightView } from "./view.ts";

export const toIso = (ms: number) => new Date(ms).toISOString();

/** A claim of this night as it is answered. */
export function toClaim(view: NightView, claim: LiveClaim): Claim {
  const job = jobOf(view, claim);
  return {
    id: claim.id,
    slot: job.slot,
    kind: job.kind,
    code: job.code,
    member: claim.member,
    name: view.nameOf(claim.member),
    handset: claim.handset,
    from: toIso(claim.fromMs),
    until: toIso(claim.untilMs),
    assigned: claim.assigned,
    problems: findProblems(view, claim.id),
  };
}

/** What a claim of this night is of; the database keeps it from going away. */
export function jobOf(view: NightView, claim: Pick<LiveClaim, "key">): Job {
  const job = view.jobs.get(claim.key);
  if (job === undefined) throw new Error(`the night has no ${claim.key}, which is claimed`);
  return job;
}

export function toEnd(plan: NightPlan, job: Job, which: "start" | "end"): ClaimEnd {
  const [place, road, layoutS, ms] =
    which === "start"
      ? [job.startPlace, job.startRoad, job.startLayoutS, job.startMs]
      : [job.endPlace, job.endRoad, job.endLayoutS, job.endMs];
  return {
    place,
    placeName: place === null ? null : (plan.placeNames.get(place) ?? place),
    road,
    roadName: road === null ? null : (plan.roadNames.get(road) ?? road),
    layout: toLayoutTimeText(Math.max(0, layoutS)),
    at: toIso(ms),
  };
}

export function toPerson(view: NightView, member: string) {
  return { member, name: view.nameOf(member) };
}

/** undefined where one of its claims went in the same moment. */
export function toSwap(view: NightView, swap: LiveSwap): Swap | undefined {
  const find = (id: string) => view.live.claims.find((claim) => claim.id === id);
  const [gives, wants] = [find(swap.givesId), find(swap.wantsId)];
  if (!gives || !wants) return undefined;
  const toHalf = (claim: LiveClaim) => {
    const { slot, kind, code } = jobOf(view, claim);
    return { claim: claim.id, slot, kind, code };
  };
  return {
    id: swap.id,
    from: toPerson(view, gives.member),
    to: toPerson(view, wants.member),
    gives: toHalf(gives),
    wants: toHalf(wants),
    message: swap.message,
    offeredAt: swap.offeredAt,
  };
}
