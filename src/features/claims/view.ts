import type { Handset } from "../../../shared/handsets.ts";
import type { Engagement } from "../../planner/people/engagements.ts";
import type { HandsetRecord } from "../../planner/people/handset-fit.ts";
import { indexJobs, type LiveClaim, type LiveNight } from "./live.ts";
import type { Job, NightPlan, PlanMember } from "./plan.ts";

/** A claim as what its member does then; of another night only the time is known. */
export interface Doing extends Engagement {
  readonly claim: LiveClaim;
  readonly job: Job | null;
}

/** A night as it stands: its plan, and what is claimed. */
export interface NightView {
  readonly plan: NightPlan;
  readonly live: LiveNight;
  readonly jobs: ReadonlyMap<string, Job>;
  /** What each member does, by time. */
  readonly doings: ReadonlyMap<string, readonly Doing[]>;
  /** Who has each handset, by time; of this night alone where it is about a charge. */
  readonly uses: ReadonlyMap<string, readonly LiveClaim[]>;
  nameOf(member: string): string;
  slotName(slot: string): string;
}

export function viewNight(plan: NightPlan, live: LiveNight): NightView {
  const jobs = indexJobs(plan);
  const doings = new Map<string, Doing[]>();
  const uses = new Map<string, LiveClaim[]>();
  for (const claim of live.claims) {
    add(doings, claim.member, toDoing(claim, jobs));
    if (claim.handset !== null) add(uses, claim.handset, claim);
  }
  return {
    plan,
    live,
    jobs,
    doings,
    uses,
    nameOf: (member) => plan.members.get(member)?.name ?? member,
    slotName: (slot) => plan.slots.find(({ code }) => code === slot)?.name ?? slot,
  };
}

function toDoing(claim: LiveClaim, jobs: ReadonlyMap<string, Job>): Doing {
  const job = claim.here ? (jobs.get(claim.key) ?? null) : null;
  const { fromMs, untilMs } = claim;
  return {
    claim,
    job,
    fromMs,
    untilMs,
    startPlace: job?.startPlace ?? null,
    endPlace: job?.endPlace ?? null,
  };
}

function add<T>(to: Map<string, T[]>, key: string, one: T): void {
  const list = to.get(key);
  if (list) list.push(one);
  else to.set(key, [one]);
}

export const toHandsetRecord = (handset: Handset): HandsetRecord => ({
  code: handset.code,
  commandSystem: handset.commandSystem,
  kind: handset.kind,
  places: handset.places,
  batteryMs: handset.batteryMinutes === null ? null : handset.batteryMinutes * 60_000,
  ready: handset.state === "ready",
});

/** An adult has a train or a duty in the slot, or said that they come to the night; claims in `without` do not count. */
export function hasAdult(
  { plan, live, jobs }: NightView,
  slot: string,
  without: ReadonlySet<string>,
): boolean {
  const isAdult = (member: PlanMember | undefined) => member?.junior === false;
  for (const member of live.attending) if (isAdult(plan.members.get(member))) return true;
  return live.claims.some(
    ({ id, here, key, member }) =>
      here && !without.has(id) && jobs.get(key)?.slot === slot && isAdult(plan.members.get(member)),
  );
}
