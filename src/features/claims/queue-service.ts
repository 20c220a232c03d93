import type { NewQueuePlace, QueuePlace } from "../../../shared/claims.ts";
import { newId } from "../../lib/ids.ts";
import { findMissingTags } from "../../planner/people/passing.ts";
import { reachJob, reachMember } from "./asking.ts";
import { type Asked, type ClaimDeps, changeNight, shareNight } from "./deeds.ts";
import { alreadySo, hindered, notWaiting } from "./errors.ts";
import { BY_MEMBERS } from "./examine.ts";
import { holderOf, keyOf } from "./live.ts";
import type { Job, PlanMember } from "./plan.ts";
import { nameOfJob, notOpen, notPassed } from "./sentences.ts";
import type { NightView } from "./view.ts";

export type QueueService = ReturnType<typeof createQueueService>;

/** Lets members wait for what is taken. */
export function createQueueService(deps: ClaimDeps) {
  return {
    join: (asked: Asked, body: NewQueuePlace): Promise<QueuePlace> =>
      changeNight(deps, asked, async (night) => {
        // whoever gives it back waits for us, and then sees us in the queue
        await shareNight(night);
        const view = await night.look();
        const job = reachJob(view, asked.address.slot, body);
        const member = reachMember(view, asked.asker, body.member);
        assertMayWait(view, job, member);
        const { night: of } = view.plan;
        const id = newId();
        await night.transaction.queuePlace.create({
          data: {
            id,
            clubId: of.club.id,
            sessionId: of.id,
            slotCode: job.slot,
            ...columnOf(job),
            memberCode: member.code,
          },
          select: { id: true },
        });
        const place = view.live.queue.filter(({ key }) => key === keyOf(job)).length + 1;
        return {
          id,
          slot: job.slot,
          kind: job.kind,
          code: job.code,
          member: member.code,
          place,
          length: place,
        };
      }),

    leave: (asked: Asked, body: NewQueuePlace): Promise<null> =>
      changeNight(deps, asked, async ({ transaction, before }) => {
        const job = reachJob(before, asked.address.slot, body);
        const member = reachMember(before, asked.asker, body.member);
        const { count } = await transaction.queuePlace.deleteMany({
          where: {
            sessionId: before.plan.night.id,
            slotCode: job.slot,
            ...columnOf(job),
            memberCode: member.code,
          },
        });
        if (count === 0) throw notWaiting(job);
        return null;
      }),
  };
}

const columnOf = ({ kind, id }: Job) => (kind === "train" ? { trainId: id } : { dutyId: id });

/** @throws Refusal session-not-open, not-passed, already-done */
function assertMayWait(view: NightView, job: Job, member: PlanMember): void {
  const { booking, queue } = view.live;
  if (!BY_MEMBERS.includes(booking.state)) throw hindered(notOpen(booking.state));
  const missing = findMissingTags(job.requires, member.passedFor);
  if (missing.length > 0) throw hindered(notPassed(member, job, missing));
  const holder = holderOf(view.live, job);
  if (holder === undefined) throw alreadySo(`Nobody has ${nameOfJob(job)}: claim it.`);
  if (holder.member === member.code) throw alreadySo(`${member.name} has ${nameOfJob(job)} already.`);
  if (queue.some(({ key, member: waits }) => key === keyOf(job) && waits === member.code))
    throw alreadySo(`${member.name} waits for ${nameOfJob(job)} already.`);
}
