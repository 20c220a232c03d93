import type { NewSwap, Swap, Swapped } from "../../../shared/claims.ts";
import { newId } from "../../lib/ids.ts";
import { jobOf, toClaim, toSwap } from "./answers.ts";
import { isSecretary } from "./asking.ts";
import { assertNoJuniorLeft, reachClaim } from "./claim-service.ts";
import { type Asked, type ClaimDeps, changeNight, holdNight, shareNight } from "./deeds.ts";
import { hindered, noSwap, notInSwap, notYours, ownSwap } from "./errors.ts";
import { BY_MEMBERS, findOwnHindrance, wishOf } from "./examine.ts";
import { claimsHere, type LiveClaim, type LiveSwap } from "./live.ts";
import { withClaims } from "./make-claim.ts";
import { notOpen } from "./sentences.ts";
import { tell } from "./tell.ts";
import type { NightView } from "./view.ts";

export type SwapService = ReturnType<typeof createSwapService>;

/** Lets two members trade what they have. Each handset stays with its train: it fits that, whoever drives. */
export function createSwapService(deps: ClaimDeps) {
  return {
    offer: (asked: Asked, { gives, wants, message }: NewSwap): Promise<Swap> =>
      changeNight(deps, asked, async (night) => {
        await shareNight(night);
        const view = await night.look();
        assertOpen(view);
        const own = reachClaim(view, asked, gives);
        const other = claimsHere(view.live).find(({ id }) => id === wants);
        if (other === undefined) throw notInSwap("/body/wants");
        if (own.member !== asked.asker.member && !isSecretary(asked.asker)) throw notYours();
        if (other.member === own.member) throw ownSwap();
        const { night: of } = view.plan;
        const offeredAt = deps.clock.now();
        const row = await night.transaction.swap.upsert({
          where: { givesId_wantsId: { givesId: gives, wantsId: wants } },
          create: {
            id: newId(),
            clubId: of.club.id,
            sessionId: of.id,
            givesId: gives,
            wantsId: wants,
            message,
            createdAt: offeredAt,
          },
          update: { message, createdAt: offeredAt },
        });
        await tell(deps, night, "swap-offered", other, jobOf(view, other));
        const offer = {
          id: row.id,
          givesId: gives,
          wantsId: wants,
          message,
          offeredAt: offeredAt.toISOString(),
        };
        const answer = toSwap(view, offer);
        if (answer === undefined) throw noSwap();
        return answer;
      }),

    accept: (asked: Asked, id: string): Promise<Swapped> =>
      changeNight(deps, asked, async (night) => {
        await holdNight(night);
        const before = await night.look();
        assertOpen(before);
        const { gives, wants } = reachSwap(before, id);
        if (wants.member !== asked.asker.member && !isSecretary(asked.asker)) throw notYours();
        const traded = [
          { ...gives, member: wants.member, assigned: false },
          { ...wants, member: gives.member, assigned: false },
        ] as const;
        const after = withClaims(before, { made: traded });
        for (const claim of traded) assertMayHave(after, claim);
        for (const { key } of traded) assertNoJuniorLeft(before, after, after.jobs.get(key)?.slot ?? "");
        // one statement, as neither may have both in between
        await night.transaction.$executeRaw`
          update claims set assigned = false,
            member_code = case id when ${gives.id}::uuid then ${wants.member} else ${gives.member} end
          where id in (${gives.id}::uuid, ${wants.id}::uuid)`;
        const both = [gives.id, wants.id];
        await night.transaction.swap.deleteMany({
          where: { OR: [{ givesId: { in: both } }, { wantsId: { in: both } }] },
        });
        for (const claim of traded) {
          const job = jobOf(after, claim);
          await night.transaction.queuePlace.deleteMany({
            where: {
              sessionId: after.plan.night.id,
              slotCode: job.slot,
              ...(job.kind === "train" ? { trainId: job.id } : { dutyId: job.id }),
              memberCode: claim.member,
            },
          });
          await tell(deps, night, "swapped", claim, job);
        }
        return { claims: traded.map((claim) => toClaim(after, claim)) };
      }),

    /** The one it was offered to says no. */
    refuse: (asked: Asked, id: string) => end(asked, id, ({ wants }) => wants.member),
    /** The one who offered it takes it back. */
    withdraw: (asked: Asked, id: string) => end(asked, id, ({ gives }) => gives.member),
  };

  function end(asked: Asked, id: string, whose: (halves: Halves) => string): Promise<null> {
    return changeNight(deps, asked, async (night) => {
      const halves = reachSwap(await night.look(), id);
      if (whose(halves) !== asked.asker.member && !isSecretary(asked.asker)) throw notYours();
      const { count } = await night.transaction.swap.deleteMany({ where: { id } });
      if (count === 0) throw noSwap();
      return null;
    });
  }
}

interface Halves {
  readonly gives: LiveClaim;
  readonly wants: LiveClaim;
}

function reachSwap({ live }: NightView, id: string): Halves {
  const swap: LiveSwap | undefined = live.swaps.find((one) => one.id === id);
  const find = (claimId: string | undefined) => live.claims.find((claim) => claim.id === claimId);
  const [gives, wants] = [find(swap?.givesId), find(swap?.wantsId)];
  if (gives && wants) return { gives, wants };
  throw noSwap();
}

/** @throws Refusal session-not-open */
function assertOpen({ live }: NightView): void {
  const { state } = live.booking;
  if (!BY_MEMBERS.includes(state)) throw hindered(notOpen(state));
}

/** Whether the member of a claim may have it, beside all else they have by then. @throws Refusal */
function assertMayHave(after: NightView, claim: LiveClaim): void {
  const job = jobOf(after, claim);
  const member = after.plan.members.get(claim.member);
  if (member === undefined) throw noSwap();
  const wish = wishOf(job, member, 0, { without: new Set([claim.id]), ruled: false });
  const hindrance = findOwnHindrance(after, wish);
  if (hindrance) throw hindered(hindrance);
}
