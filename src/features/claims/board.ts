import type { Board, BoardDuty, BoardTrain, Hindrance } from "../../../shared/claims.ts";
import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import { findBefore } from "../../planner/people/engagements.ts";
import { toClaim, toEnd, toIso, toSwap } from "./answers.ts";
import { toBoardHandset, toEvening, toLocomotives } from "./evening.ts";
import { type Examined, examine, findOwnHindrance, wishOf } from "./examine.ts";
import { holderOf, keyOf } from "./live.ts";
import type { Job, PlanMember, PlanSlot } from "./plan.ts";
import { notOpen } from "./sentences.ts";
import type { NightView } from "./view.ts";

/** Who looks at a board, and when. */
export interface Looker {
  /** null: in no list of members. */
  readonly member: PlanMember | null;
  readonly nowMs: number;
}

/** The claim board of one slot, as one member sees it. Cost: trains × (handsets + what the member has). */
export function toBoard(view: NightView, slot: PlanSlot, looker: Looker): Board {
  const { plan, live } = view;
  const { booking } = live;
  const jobs = plan.jobs.filter((job) => job.slot === slot.code);
  const trains = jobs.flatMap((job) => (job.train ? [toTrain(view, job, job.train, looker)] : []));
  const evening = toEvening(view, looker.member?.code ?? null);
  return {
    session: plan.night.code,
    sessionName: plan.night.name,
    slot: slot.code,
    slotName: slot.name,
    slots: plan.slots.map(({ code, name }) => ({ code, name })),
    state: booking.state,
    timeZone: plan.night.club.timeZone,
    startsAt: slot.startsAt.toISOString(),
    endsAt: slot.endsAt.toISOString(),
    layoutStart: toLayoutTimeText(slot.layoutStartS),
    clockRatio: plan.night.clockRatio,
    venueNote: booking.venueNote,
    noteToAll: booking.noteToAll,
    secondClaimFrom: booking.secondClaimFrom?.toISOString() ?? null,
    me: toMe(view, looker.member),
    evening,
    trains,
    duties: jobs.flatMap((job) => (job.duty ? [toDuty(view, job, job.duty, looker)] : [])),
    handsets: namedHandsets(view, trains),
    swaps: swapsOf(view, looker.member),
  };
}

function toMe({ live }: NightView, member: PlanMember | null): Board["me"] {
  if (member === null) return null;
  const { code, name, junior, passedFor } = member;
  return { member: code, name, junior, passedFor: [...passedFor], coming: live.attending.has(code) };
}

function swapsOf(view: NightView, member: PlanMember | null): Board["swaps"] {
  if (member === null) return [];
  return view.live.swaps
    .flatMap((swap) => toSwap(view, swap) ?? [])
    .filter(({ from, to }) => from.member === member.code || to.member === member.code);
}

/** Those that any train names: as chosen, as possible, or as taken. */
function namedHandsets({ plan }: NightView, trains: readonly BoardTrain[]): Board["handsets"] {
  const named = new Set(
    trains.flatMap(({ claim, handsets }) => [...handsets, ...(claim?.handset ? [claim.handset] : [])]),
  );
  return [...named].sort().flatMap((code) => {
    const handset = plan.handsets.get(code);
    return handset ? [toBoardHandset(handset)] : [];
  });
}

function toTrain(view: NightView, job: Job, train: NonNullable<Job["train"]>, looker: Looker): BoardTrain {
  const examined = look(view, job, looker);
  const handsets = examined?.ok ? [...examined.handsets] : [];
  return {
    ...toRow(view, job, looker, examined),
    priority: train.priority,
    calls: train.calls,
    locomotives: toLocomotives(view, job),
    control: train.control,
    handset: handsets[0] ?? null,
    handsets,
  };
}

function toDuty(view: NightView, job: Job, duty: NonNullable<Job["duty"]>, looker: Looker): BoardDuty {
  return { ...toRow(view, job, looker, look(view, job, looker)), kind: duty.kind, note: duty.note };
}

const look = (view: NightView, job: Job, { member, nowMs }: Looker): Examined | null =>
  member === null ? null : examine(view, wishOf(job, member, nowMs));

function toRow(view: NightView, job: Job, looker: Looker, examined: Examined | null) {
  const { plan, live } = view;
  const { member } = looker;
  const holder = holderOf(live, job);
  const mine = holder !== undefined && holder.member === member?.code;
  const waiting = live.queue.filter(({ key }) => key === keyOf(job));
  const at = waiting.findIndex((wait) => wait.member === member?.code);
  const why: Hindrance | null =
    mine || examined?.ok
      ? null
      : (examined?.hindrance ?? (live.booking.state === "open" ? null : notOpen(live.booking.state)));
  return {
    code: job.code,
    name: job.name,
    requires: [...job.requires],
    from: toEnd(plan, job, "start"),
    to: toEnd(plan, job, "end"),
    pickUpAt: toIso(job.fromMs),
    handInAt: toIso(job.untilMs),
    claim: holder ? toClaim(view, holder) : null,
    mine,
    queue: { length: waiting.length, place: at < 0 ? null : at + 1 },
    may: examined?.ok === true,
    why,
    mayQueue: !mine && at < 0 && mayWait(view, job, looker, why),
    walk: toWalk(view, job, member),
  };
}

/** What passes by itself does not keep one from waiting; what one is not passed for does. */
function mayWait(view: NightView, job: Job, { member, nowMs }: Looker, why: Hindrance | null): boolean {
  if (member === null || why?.code !== "taken") return false;
  return findOwnHindrance(view, wishOf(job, member, nowMs))?.code !== "not-passed";
}

/** From where the member's last thing before it ends. */
function toWalk(view: NightView, job: Job, member: PlanMember | null): BoardTrain["walk"] {
  const doings = (view.doings.get(member?.code ?? "") ?? []).filter((doing) => doing.job !== null);
  const before = findBefore(doings, job.fromMs);
  if (before === null || before.job === job) return null;
  const walkMs = view.plan.walk(before.endPlace, job.startPlace);
  return {
    from: before.endPlace,
    fromName: before.endPlace === null ? null : (view.plan.placeNames.get(before.endPlace) ?? null),
    seconds: Math.ceil(walkMs / 1_000),
    spareSeconds: Math.floor((job.fromMs - before.untilMs - walkMs) / 1_000),
  };
}
