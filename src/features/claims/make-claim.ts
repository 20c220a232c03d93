import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";
import { findUnavailable } from "../../planner/people/handset-fit.ts";
import { type NightInHand, Outrun, shareNight } from "./deeds.ts";
import { hindered } from "./errors.ts";
import { type Examined, examine, type Wish } from "./examine.ts";
import { keyOf, type LiveClaim } from "./live.ts";
import type { Job, NightPlan, PlanMember } from "./plan.ts";
import { type NightView, toHandsetRecord, viewNight } from "./view.ts";

/** @throws Refusal with what is in the way; or returns the handsets to choose from */
export function assertGranted(examined: Examined): readonly string[] {
  if (examined.ok) return examined.handsets;
  throw hindered(examined.hindrance);
}

/**
 * Grants a wish beside others who claim at the same time. First it is looked at, as most that can't be can be told so
 * without asking anybody to wait; then with the booking, the member and the handset held, which is the order in which
 * everybody takes them.
 */
export async function claimBesideOthers(night: NightInHand, wish: Wish): Promise<LiveClaim> {
  const { transaction, before } = night;
  assertGranted(examine(await night.look(), wish));
  await shareNight(night);
  const member = await holdMember(transaction, before.plan, wish.member);
  const handsets = assertGranted(examine(await night.look(), { ...wish, member }));
  const handset = await holdHandset(transaction, before, wish.job, handsets, wish.handset === null);
  return insertClaim(transaction, before.plan, wish.job, { member: member.code, handset, assigned: false });
}

/** The member as they are recorded, and stay until the end; none of their other claims is made meanwhile. */
async function holdMember(
  transaction: Transaction,
  { night }: NightPlan,
  { code, name }: PlanMember,
): Promise<PlanMember> {
  const [row] = await transaction.$queryRaw<{ passedFor: string[]; junior: boolean }[]>`
    select passed_for as "passedFor", junior from members
    where club_id = ${night.club.id}::uuid and code = ${code} for no key update`;
  if (row === undefined) throw new Outrun();
  return { code, name, ...row };
}

interface HandsetRow {
  readonly code: string;
  readonly state: string;
}

/**
 * Holds the best of the handsets that nobody else is just claiming, where there is a choice, else waits for it; and looks
 * at who has it once more, now that nobody can take it.
 */
async function holdHandset(
  transaction: Transaction,
  view: NightView,
  job: Job,
  handsets: readonly string[],
  choice: boolean,
): Promise<string | null> {
  const [best] = handsets;
  if (best === undefined) return null;
  const clubId = view.plan.night.club.id;
  const [free] = choice
    ? await transaction.$queryRaw<HandsetRow[]>`
        select code, state from handsets where club_id = ${clubId}::uuid and code = any(${[...handsets]}::text[])
        order by array_position(${[...handsets]}::text[], code) limit 1 for no key update skip locked`
    : [];
  const held =
    free ??
    (
      await transaction.$queryRaw<HandsetRow[]>`
        select code, state from handsets where club_id = ${clubId}::uuid and code = ${best} for no key update`
    )[0];
  if (held?.state !== "ready") throw new Outrun();
  const uses = await transaction.claim.findMany({
    where: {
      clubId,
      handsetCode: held.code,
      OR: [
        { sessionId: view.plan.night.id },
        { fromAt: { lt: new Date(job.untilMs) }, untilAt: { gt: new Date(job.fromMs) } },
      ],
    },
    select: { fromAt: true, untilAt: true },
  });
  const times = uses.map(({ fromAt, untilAt }) => ({ fromMs: fromAt.getTime(), untilMs: untilAt.getTime() }));
  const record = view.plan.handsets.get(held.code);
  if (record === undefined || findUnavailable(toHandsetRecord(record), times, job) !== null)
    throw new Outrun();
  return held.code;
}

export interface NewClaimRow {
  readonly member: string;
  readonly handset: string | null;
  readonly assigned: boolean;
}

/** Writes a claim that has been looked at, and ends the member's wait for it. */
export async function insertClaim(
  transaction: Transaction,
  { night }: NightPlan,
  job: Job,
  { member, handset, assigned }: NewClaimRow,
): Promise<LiveClaim> {
  const id = newId();
  const which = {
    trainId: job.kind === "train" ? job.id : null,
    dutyId: job.kind === "duty" ? job.id : null,
  };
  await transaction.claim.create({
    data: {
      id,
      clubId: night.club.id,
      sessionId: night.id,
      slotCode: job.slot,
      ...which,
      memberCode: member,
      handsetCode: handset,
      fromAt: new Date(job.fromMs),
      untilAt: new Date(job.untilMs),
      assigned,
    },
    select: { id: true },
  });
  await transaction.queuePlace.deleteMany({
    where: { sessionId: night.id, slotCode: job.slot, ...which, memberCode: member },
  });
  const { fromMs, untilMs } = job;
  return { id, here: true, key: keyOf(job), member, handset, fromMs, untilMs, assigned };
}

/** The night with claims made and ended since it was looked at. */
export function withClaims(
  { plan, live }: NightView,
  { made = [], gone = [] }: { readonly made?: readonly LiveClaim[]; readonly gone?: readonly string[] },
): NightView {
  const changed = new Set([...gone, ...made.map(({ id }) => id)]);
  const claims = [...live.claims.filter(({ id }) => !changed.has(id)), ...made];
  return viewNight(plan, {
    ...live,
    claims: claims.sort((a, b) => a.fromMs - b.fromMs || (a.id < b.id ? -1 : 1)),
  });
}
