import type { Claim, GivenBack, NewClaim } from "../../../shared/claims.ts";
import { jobOf, toClaim } from "./answers.ts";
import { isSecretary, reachJob, reachMember } from "./asking.ts";
import { type Asked, type ClaimDeps, changeNight, holdNight, type NightInHand } from "./deeds.ts";
import { hindered, lastAdult, noClaim, notYours } from "./errors.ts";
import { BY_MEMBERS, BY_SECRETARY, examine, findHandsetHindrance, wishOf } from "./examine.ts";
import { claimsHere, type LiveClaim } from "./live.ts";
import { assertGranted, claimBesideOthers, insertClaim, withClaims } from "./make-claim.ts";
import type { Job } from "./plan.ts";
import { notOpen } from "./sentences.ts";
import { tell } from "./tell.ts";
import { hasAdult, type NightView } from "./view.ts";

export type ClaimService = ReturnType<typeof createClaimService>;

/** Makes claims, and ends them. */
export function createClaimService(deps: ClaimDeps) {
  return {
    /** A member claims for themselves, or the secretary for anyone as the member would. */
    claim: (asked: Asked, body: NewClaim): Promise<Claim> =>
      changeNight(deps, asked, async (night) => {
        const { asker, address } = asked;
        const job = reachJob(night.before, address.slot, body);
        const member = reachMember(night.before, asker, body.member);
        const nowMs = deps.clock.now().getTime();
        const wish = wishOf(job, member, nowMs, { handset: body.handset ?? null });
        const claim = await claimBesideOthers(night, wish);
        return toClaim(withClaims(night.before, { made: [claim] }), claim);
      }),

    /** Chooses another handset for a claim. */
    changeHandset: (asked: Asked, id: string, handset: string): Promise<Claim> =>
      changeNight(deps, asked, async (night) => {
        await holdNight(night);
        const view = await night.look();
        const claim = reachClaim(view, asked, id);
        assertMayChange(view, asked, claim);
        const hindrance = findHandsetHindrance(view, jobOf(view, claim), handset, new Set([id]));
        if (hindrance) throw hindered(hindrance);
        await night.transaction.claim.update({ where: { id }, data: { handsetCode: handset } });
        const changed = { ...claim, handset };
        return toClaim(withClaims(view, { made: [changed] }), changed);
      }),

    /** Gives a claim back; whoever waits first and may have it has it from then on, in the same moment. */
    giveBack: (asked: Asked, id: string): Promise<GivenBack> =>
      changeNight(deps, asked, async (night) => {
        await holdNight(night);
        const before = await night.look();
        const claim = reachClaim(before, asked, id);
        assertMayChange(before, asked, claim);
        const given = toClaim(before, claim);
        await night.transaction.claim.delete({ where: { id } });
        const without = withClaims(before, { gone: [id] });
        const job = jobOf(before, claim);
        const next = await promote(night, without, job);
        const after = next ? withClaims(without, { made: [next] }) : without;
        assertNoJuniorLeft(before, after, job.slot);
        return { claim: given, next: next ? toClaim(after, next) : null };
      }),
  };

  /** The first who waits and may have it gets it, once; those who may not meanwhile keep their places. */
  async function promote(night: NightInHand, view: NightView, job: Job): Promise<LiveClaim | null> {
    if (view.live.booking.state === "running") return null;
    const nowMs = deps.clock.now().getTime();
    for (const { key, member: code } of view.live.queue) {
      const member = view.plan.members.get(code);
      if (view.jobs.get(key) !== job || member === undefined) continue;
      const examined = examine(view, wishOf(job, member, nowMs, { during: ["open", "locked"] }));
      if (!examined.ok) continue;
      const [handset = null] = assertGranted(examined);
      const claim = await insertClaim(night.transaction, view.plan, job, {
        member: code,
        handset,
        assigned: false,
      });
      await tell(deps, night, "got-from-queue", claim, job);
      return claim;
    }
    return null;
  }
}

/** @throws Refusal not-found */
export function reachClaim(view: NightView, { address }: Asked, id: string): LiveClaim {
  const claim = claimsHere(view.live).find((one) => one.id === id);
  if (claim && jobOf(view, claim).slot === address.slot) return claim;
  throw noClaim();
}

/** @throws Refusal not-permitted, session-not-open */
function assertMayChange({ live }: NightView, { asker }: Asked, claim: LiveClaim): void {
  const { state } = live.booking;
  if (claim.member !== asker.member && !isSecretary(asker)) throw notYours();
  if (!(isSecretary(asker) ? BY_SECRETARY : BY_MEMBERS).includes(state)) throw hindered(notOpen(state));
}

/**
 * No junior loses the last adult of the slot by a deed; where there was none before, the deed did not take them away.
 * @throws Refusal last-adult
 */
export function assertNoJuniorLeft(before: NightView, after: NightView, slot: string): void {
  const none: ReadonlySet<string> = new Set();
  if (!hasAdult(before, slot, none) || hasAdult(after, slot, none)) return;
  const juniors = claimsHere(after.live)
    .filter((claim) => after.jobs.get(claim.key)?.slot === slot)
    .map(({ member }) => member);
  if (juniors.length > 0)
    throw lastAdult(
      [...new Set(juniors)].map((member) => after.nameOf(member)),
      after.slotName(slot),
    );
}
