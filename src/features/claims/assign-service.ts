import type { Assigned, NewAssignment } from "../../../shared/claims.ts";
import { toClaim } from "./answers.ts";
import { reachJob, reachMember } from "./asking.ts";
import { assertNoJuniorLeft } from "./claim-service.ts";
import { type Asked, type ClaimDeps, changeNight, holdNight } from "./deeds.ts";
import { hindered } from "./errors.ts";
import { BY_SECRETARY, examine, wishOf } from "./examine.ts";
import { holderOf, type LiveClaim } from "./live.ts";
import { assertGranted, insertClaim, withClaims } from "./make-claim.ts";
import { notOpen } from "./sentences.ts";
import { tell } from "./tell.ts";
import type { NightView } from "./view.ts";

export type AssignService = ReturnType<typeof createAssignService>;

/** Lets the secretary say who does what. What is impossible stays so; the rule on second trains does not bind them. */
export function createAssignService(deps: ClaimDeps) {
  return {
    assign: (asked: Asked, body: NewAssignment): Promise<Assigned> =>
      changeNight(deps, asked, async (night) => {
        await holdNight(night);
        const view = await night.look();
        const job = reachJob(view, asked.address.slot, body);
        const { state } = view.live.booking;
        if (!BY_SECRETARY.includes(state)) throw hindered(notOpen(state));
        const holder = holderOf(view.live, job);
        const before = holder ? toClaim(view, holder) : null;
        const member = body.member === null ? null : reachMember(view, asked.asker, body.member);
        if (member === null && holder === undefined) return { before, now: null };
        const gone = holder ? [holder.id] : [];
        const handset = body.handset ?? (holder?.member === member?.code ? (holder?.handset ?? null) : null);
        const wish =
          member &&
          wishOf(job, member, 0, { during: BY_SECRETARY, without: new Set(gone), ruled: false, handset });
        const handsets = wish ? assertGranted(examine(view, wish)) : [];
        if (holder) await night.transaction.claim.delete({ where: { id: holder.id } });
        const row = { member: member?.code ?? "", handset: handsets[0] ?? null, assigned: true };
        const made = member ? await insertClaim(night.transaction, view.plan, job, row) : undefined;
        const after = withClaims(view, { gone, made: made ? [made] : [] });
        assertNoJuniorLeft(view, after, job.slot);
        if (holder && holder.member !== member?.code) await tell(deps, night, "taken-off", holder, job);
        if (made && holder?.member !== made.member) await tell(deps, night, "assigned", made, job);
        return { before, now: made ? answerOf(after, made) : null };
      }),
  };
}

const answerOf = (view: NightView, claim: LiveClaim) => toClaim(view, claim);
