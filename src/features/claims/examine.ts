import type { BookingState } from "../../../shared/booking.ts";
import type { Hindrance } from "../../../shared/claims.ts";
import { findCollision } from "../../planner/people/engagements.ts";
import {
  findUnavailable,
  findUnusable,
  type HandsetRecord,
  rankHandsets,
} from "../../planner/people/handset-fit.ts";
import { findMissingTags } from "../../planner/people/passing.ts";
import { holderOf } from "./live.ts";
import type { Job, PlanMember } from "./plan.ts";
import * as say from "./sentences.ts";
import { hasAdult, type NightView, toHandsetRecord } from "./view.ts";

/** Who wants what. */
export interface Wish {
  readonly job: Job;
  readonly member: PlanMember;
  /** null: whichever fits. */
  readonly handset: string | null;
  /** What time it is. */
  readonly nowMs: number;
  /** States of the night in which such a wish may be granted. */
  readonly during: readonly BookingState[];
  /** Claims that end with the same deed: they are in nobody's way. */
  readonly without: ReadonlySet<string>;
  /** Whether the rule on second trains holds for it. */
  readonly ruled: boolean;
}

export const BY_MEMBERS: readonly BookingState[] = ["open"];
export const BY_SECRETARY: readonly BookingState[] = ["open", "locked", "running"];

const NOTHING: ReadonlySet<string> = new Set();

export const wishOf = (job: Job, member: PlanMember, nowMs: number, more: Partial<Wish> = {}): Wish => ({
  job,
  member,
  nowMs,
  handset: null,
  during: BY_MEMBERS,
  without: NOTHING,
  ruled: true,
  ...more,
});

export type Examined =
  | { readonly ok: true; readonly handsets: readonly string[] }
  | { readonly ok: false; readonly hindrance: Hindrance };

/**
 * The first thing in the way of a wish, as the night stands; or the handsets with which it can be granted, the best first,
 * none where none is needed. Looks at everything that can be told without asking anybody.
 */
export function examine(view: NightView, wish: Wish): Examined {
  const hindrance = findHindrance(view, wish);
  if (hindrance) return { ok: false, hindrance };
  return chooseHandset(view, wish);
}

function findHindrance(view: NightView, wish: Wish): Hindrance | null {
  const { state } = view.live.booking;
  const issued = view.plan.slots.find(({ code }) => code === wish.job.slot)?.issued;
  if (!wish.during.includes(state) || !issued) return say.notOpen(state);
  const holder = holderOf(view.live, wish.job);
  if (holder && !wish.without.has(holder.id)) return say.taken(view, wish.job, holder);
  return findOwnHindrance(view, wish);
}

/** What is in the way of this member, whoever has it now. */
export function findOwnHindrance(view: NightView, wish: Wish): Hindrance | null {
  const { job, member, without } = wish;
  const missing = findMissingTags(job.requires, member.passedFor);
  if (missing.length > 0) return say.notPassed(member, job, missing);
  if (member.junior && !hasAdult(view, job.slot, without)) return say.juniorAlone(view, member, job);
  const doings = (view.doings.get(member.code) ?? []).filter(({ claim }) => !without.has(claim.id));
  const collision = findCollision(doings, job, view.plan.walk);
  if (collision) return say.collides(view, member, job, collision);
  const from = view.live.booking.secondClaimFrom;
  if (!wish.ruled || from === null || wish.nowMs >= from.getTime() || job.kind === "duty") return null;
  const first = doings.find((doing) => doing.claim.here && doing.job?.kind === "train")?.job;
  return first ? say.secondTooEarly(view, member, first, from) : null;
}

/** Handsets that could drive the job's train at any time, ready or not; null: it needs none. */
function listHandsets({ plan }: NightView, { train }: Job): HandsetRecord[] | null {
  const system = train?.system ?? null;
  if (train === null || system === null) return null;
  return [...plan.handsets.values()]
    .map(toHandsetRecord)
    .filter((handset) => findUnusable(handset, { commandSystem: system, places: train.places }) === null);
}

function chooseHandset(view: NightView, wish: Wish): Examined {
  const { job, handset: wanted, member, without } = wish;
  const usable = listHandsets(view, job);
  if (usable === null)
    return wanted === null ? { ok: true, handsets: [] } : { ok: false, hindrance: say.needsNone(job) };
  if (wanted !== null) return lookAtWanted(view, wish, wanted);
  if (usable.length === 0) return { ok: false, hindrance: say.noneUsable(job) };
  const free = usable.filter(
    (handset) => findUnavailable(handset, usesOf(view, handset.code, job, without), job) === null,
  );
  if (free.length === 0) return { ok: false, hindrance: say.allTaken(job) };
  const has = new Set((view.doings.get(member.code) ?? []).flatMap(({ claim }) => claim.handset ?? []));
  return { ok: true, handsets: rankHandsets(free, has).map(({ code }) => code) };
}

function lookAtWanted(view: NightView, { job, without }: Wish, wanted: string): Examined {
  const hindrance = findHandsetHindrance(view, job, wanted, without);
  return hindrance ? { ok: false, hindrance } : { ok: true, handsets: [wanted] };
}

/** Why this one can't be had for the job. */
export function findHandsetHindrance(
  view: NightView,
  job: Job,
  wanted: string,
  without: ReadonlySet<string>,
): Hindrance | null {
  const { train } = job;
  const record = view.plan.handsets.get(wanted);
  if (record === undefined) return say.noSuchHandset(wanted);
  if (train === null || train.system === null) return say.needsNone(job);
  const handset = toHandsetRecord(record);
  const fault = findUnusable(handset, { commandSystem: train.system, places: train.places });
  if (fault) return say.unusable(view, job, wanted, fault);
  const found = findUnavailable(handset, usesOf(view, wanted, job, without), job);
  return found && say.unavailable(view, wanted, found);
}

/** A charge lasts a night: of other nights only what is at the same time matters. */
const usesOf = (view: NightView, handset: string, job: Job, without: ReadonlySet<string>) =>
  (view.uses.get(handset) ?? []).filter(
    ({ id, here, fromMs, untilMs }) =>
      !without.has(id) && (here || (fromMs < job.untilMs && job.fromMs < untilMs)),
  );

/** What has come in the way of a claim since it was made. */
export function findProblems(view: NightView, claimId: string): Hindrance[] {
  const claim = view.live.claims.find(({ id }) => id === claimId);
  const job = claim && view.jobs.get(claim.key);
  const member = claim && view.plan.members.get(claim.member);
  if (!claim || !job || !member) return [];
  const itself = new Set([claim.id]);
  const found: Hindrance[] = [];
  const own = findOwnHindrance(view, wishOf(job, member, 0, { without: itself, ruled: false }));
  if (own) found.push(own);
  if (claim.handset !== null) {
    const fault = findHandsetHindrance(view, job, claim.handset, itself);
    if (fault) found.push(fault);
  } else if (job.train && job.train.system !== null) found.push(say.needsHandset(job));
  return found;
}
