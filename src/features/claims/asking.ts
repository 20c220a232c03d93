import type { Membership } from "../../http/actor.ts";
import { forOthers, nobody, noJob, noMember, noSlot } from "./errors.ts";
import { findJob, type Job, type PlanMember, type PlanSlot } from "./plan.ts";
import type { NightView } from "./view.ts";

interface What {
  readonly train?: string | undefined;
  readonly duty?: string | undefined;
}

/** @throws Refusal not-found */
export function reachSlot({ plan }: NightView, slot: string): PlanSlot {
  const found = plan.slots.find(({ code }) => code === slot);
  if (found) return found;
  throw noSlot(plan.night.code, slot);
}

/** @throws Refusal unprocessable, not-found */
export function reachJob(view: NightView, slot: string, { train, duty }: What): Job {
  reachSlot(view, slot);
  const kind = train === undefined ? "duty" : "train";
  const code = train ?? duty ?? "";
  const job = findJob(view.plan, slot, kind, code);
  if (job) return job;
  throw noJob(kind, slot, code);
}

/**
 * Whom a request is about: whoever asks, or another where they may book.
 * @throws Refusal not-permitted, unprocessable
 */
export function reachMember(view: NightView, asker: Membership, named: string | undefined): PlanMember {
  const code = named ?? asker.member;
  if (code === null) throw nobody();
  if (code !== asker.member && !asker.permissions.has("book")) throw forOthers();
  const member = view.plan.members.get(code);
  if (member) return member;
  throw noMember(code);
}

export const isSecretary = (asker: Membership) => asker.permissions.has("book");
