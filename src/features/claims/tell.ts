import type { ClaimDeps, NightInHand } from "./deeds.ts";
import type { LiveClaim } from "./live.ts";
import type { ClaimNews } from "./notify.ts";
import type { Job } from "./plan.ts";

/** Lets a member know of a claim that came or went without them. */
export const tell = (
  { notify }: Pick<ClaimDeps, "notify">,
  { transaction, before }: NightInHand,
  kind: ClaimNews["kind"],
  { id, member }: Pick<LiveClaim, "id" | "member">,
  job: Job,
): Promise<void> =>
  notify(transaction, {
    kind,
    clubId: before.plan.night.club.id,
    club: before.plan.night.club.code,
    session: before.plan.night.code,
    slot: job.slot,
    job: { kind: job.kind, code: job.code, name: job.name },
    claimId: id,
    member,
  });
